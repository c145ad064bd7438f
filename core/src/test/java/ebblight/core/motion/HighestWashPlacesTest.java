package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import org.junit.jupiter.api.Test;

/** Drawn shores: what is water, what was reached, and what is neither, by the words of {@link HighestWash}. */
class HighestWashPlacesTest {

    private static final int W = 64;
    private static final int H = 48;
    private static final int FRAMES = 40;
    private static final double SPACING = 5;
    private static final int GREAT = 25;

    private final HighestWash wash = HighestWash.of(survey(everywhere(Kind.FLOWING), HighestWashPlacesTest::shore));
    private final byte[] places = wash.places();

    private static ViewSurvey survey(RegionModel model, Plain.Scene scene) {
        return ViewSurvey.of(Plain.clip(W, H, FRAMES, SPACING, scene), Strokes.none(), model, Work.alone());
    }

    private static RegionModel everywhere(Kind kind) {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[RegionModel.FEATURES][kind.column()] = 20;
        return Coast.byRow(weights);
    }

    private static double ground(int x, int y) {
        return 0.25 + 0.1 * new Dice(91L * y + x).even();
    }

    /** Restless water, patches of four pixels. */
    private static double water(int x, int y, int frame) {
        return 0.1 + 0.5 * new Dice(7919L * frame + 97L * (y / 4) + x / 4).even();
    }

    /** Water to row 20, four rows more in every other frame; once to row 37, round two rocks. */
    private static double shore(int x, int y, double seconds) {
        int frame = (int) Math.rint(seconds / SPACING);
        if (y < 20) {
            return water(x, y, frame);
        }
        boolean small = x >= 20 && x < 23 && y >= 27 && y < 30;
        boolean large = x >= 36 && x < 58 && y >= 24 && y < 37;
        if ((y < 24 && frame % 2 == 0) || (y < 37 && frame == GREAT && !small && !large)) {
            return 0.8;
        }
        if (frame == 12 && y == 26 && (x == 51 || (x > 40 && x < 44))) {
            return ground(x, y) + 0.3; // on the rock: a glint of one pixel, a splash of three
        }
        if (frame == 12 && (y == 25 || y == 27) && x > 40 && x < 44) {
            return ground(x, y) + 0.3;
        }
        if (frame == 12 && y > 39 && y < 46 && x > 50 && x < 58) {
            return 0.9; // a bird, apart from the water
        }
        return ground(x, y);
    }

    private byte at(int x, int y) {
        return places[y * W + x];
    }

    @Test
    void waterIsWhatMovesOften() {
        for (int x = 2; x < W - 2; x++) {
            for (int y = 2; y < 22; y++) {
                assertThat(at(x, y)).as("%d, %d", x, y).isEqualTo(HighestWash.WATER);
            }
        }
    }

    @Test
    void whatOneWaveReachedWasWashed() {
        assertThat(wash.highestFrame()).isEqualTo(GREAT);
        for (int y = 26; y < 36; y++) {
            assertThat(at(8, y)).as("row %d", y).isEqualTo(HighestWash.WASHED);
            assertThat(at(61, y)).as("row %d", y).isEqualTo(HighestWash.WASHED);
        }
        // a square of three pixels blurs the line by one
        for (int x = 0; x < 33; x++) {
            assertThat(at(x, 39)).as("column %d", x).isEqualTo(HighestWash.NEVER);
        }
    }

    @Test
    void aSmallStoneInTheWashCountsAndARockDoesNot() {
        assertThat(at(21, 28)).isEqualTo(HighestWash.WASHED);
        assertThat(at(47, 31)).isEqualTo(HighestWash.NEVER);
    }

    @Test
    void whatIsApartFromTheWaterIsNoWash() {
        assertThat(at(54, 43)).isEqualTo(HighestWash.NEVER);
    }

    /** A difference counts in the mean over nine pixels: a glint of 0.3 leaves a thirtieth, a splash all of it. */
    @Test
    void aGlintOfOnePixelIsNoWaterAndASplashIs() {
        assertThat(at(51, 26)).isEqualTo(HighestWash.NEVER);
        assertThat(at(42, 26)).isEqualTo(HighestWash.WASHED);
    }

    /** The band runs over the thirteen rows 24 to 36; a rise of half the wash's height covers six or seven more. */
    @Test
    void aRiseCarriesTheLineOnByItsShareOfTheBand() {
        assertThat(wash.bandPixels()).isCloseTo(13, within(2.5));
        byte[] risen = wash.places(0.5, W);
        for (int p = 0; p < places.length; p++) {
            if (places[p] != HighestWash.NEVER) {
                assertThat(risen[p]).isEqualTo(places[p]);
            }
        }
        int before = rows(places, 8);
        assertThat(rows(risen, 8) - before).isEqualTo((int) (0.5 * wash.bandPixels()));
        assertThat(risen[(before + 1) * W + 8]).isEqualTo(HighestWash.WITH_RISE);
        assertThat(wash.places(0, W)).isEqualTo(places);
    }

    private static int rows(byte[] places, int x) {
        int count = 0;
        for (int y = 0; y < H; y++) {
            count += places[y * W + x] == HighestWash.NEVER ? 0 : 1;
        }
        return count;
    }

    /** Sky that moves above, branches that sway below, water between. */
    @Test
    void skyAndBranchesAreNoWater() {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[7][Kind.DRIFTING.column()] = -6;
        weights[7][Kind.SWAYING.column()] = 6;
        weights[RegionModel.FEATURES][Kind.FLOWING.column()] = 10;
        weights[RegionModel.FEATURES][Kind.FIXED.column()] = -99;
        Plain.Scene restless = (x, y, t) -> water(x, y, (int) Math.rint(t / SPACING));
        byte[] places = HighestWash.of(survey(Coast.byRow(weights), restless)).places();
        int[] count = new int[H];
        for (int p = 0; p < places.length; p++) {
            count[p / W] += places[p] == HighestWash.WATER ? 1 : 0;
        }
        assertThat(count[4]).isZero();
        assertThat(count[H - 5]).isZero();
        assertThat(count[H / 2]).isEqualTo(W);
        // where nothing is known to flow, what sways may be water
        byte[] alone =
                HighestWash.of(survey(everywhere(Kind.SWAYING), restless)).places();
        assertThat(alone[24 * W + 32]).isEqualTo(HighestWash.WATER);
        assertThat(HighestWash.of(survey(everywhere(Kind.DRIFTING), restless)).places())
                .containsOnly(HighestWash.NEVER);
    }

    @Test
    void whereNothingMovesThereIsNoWaterAndNoBand() {
        HighestWash still = HighestWash.of(survey(everywhere(Kind.FLOWING), (x, y, t) -> ground(x, y)));
        assertThat(still.bandPixels()).isZero();
        assertThat(still.places()).containsOnly(HighestWash.NEVER);
        assertThat(still.highestFrame()).isZero();
    }
}
