package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A drawn sky over a drawn sea: where they meet is known because it was drawn there. */
class HorizonTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;

    @Test
    void anEvenLineIsFoundWhereItWasDrawn() {
        for (double row : new double[] {18, 21.5, 27.25}) {
            Horizon found = find(row, row, row);
            assertThat(found.left()).isCloseTo(row, within(0.5));
            assertThat(found.right()).isCloseTo(row, within(0.5));
        }
    }

    /** One degree over 64 px is 64 tan 1° = 1.12 px. */
    @Test
    void aCameraHeldALittleAskewIsSeen() {
        Horizon found = find(22, 23.12, 22.5);
        assertThat(found.left()).isCloseTo(22, within(0.5));
        assertThat(found.right() - found.left()).isCloseTo(1.12, within(0.4));
        Horizon other = find(23.12, 22, 22.5);
        assertThat(other.right() - other.left()).isCloseTo(-1.12, within(0.4));
    }

    /** Far water that seems to drift: the parts meet lower than the light does. */
    @Test
    void theLightTellsTheLineBetterThanTheParts() {
        Horizon found = find(20, 20, 24);
        assertThat(found.left()).isCloseTo(20, within(0.5));
        assertThat(found.right()).isCloseTo(20, within(0.5));
    }

    @Test
    void whereNothingIsClearThereIsNone() {
        float[] edge = light(22, 22);
        assertThat(Horizon.find(regions(22), edge)).isPresent();
        assertThat(Horizon.find(regions(22), new float[WIDTH * HEIGHT])).isEmpty();
        assertThat(Horizon.find(turned(regions(22)), edge)).isEmpty();
        assertThat(Horizon.find(Drawing.regions(16, "####", "####", "####"), edge))
                .isEmpty();
        assertThat(Horizon.find(Drawing.regions(16, "cccc", "cccc", "cccc"), edge))
                .isEmpty();
        assertThat(Horizon.find(Drawing.regions(16, "~~~~", "~~~~", "~~~~"), edge))
                .isEmpty();
        assertThat(Horizon.find(Drawing.regions(13, "ccc", "ccc", "~~~"), new float[39 * 39]))
                .isEmpty();
    }

    /** Steps of ten degrees are a shore or a hill. */
    @Test
    void aSlopeIsNoHorizon() {
        assertThat(Horizon.find(regions(22), light(17, 28))).isEmpty();
    }

    @Test
    void bandsAsStrongAsTheLineMakeItUnclear() {
        float[] bands = new float[WIDTH * HEIGHT];
        for (int p = 0; p < bands.length; p++) {
            bands[p] = p / WIDTH / 5 % 2 == 0 ? 0.3f : 0.5f;
        }
        assertThat(Horizon.find(regions(20), bands)).isEmpty();
    }

    @Test
    void itsRowGoesStraightFromEdgeToEdge() {
        Horizon line = new Horizon(10, 20);
        assertThat(line.at(0, 101)).isEqualTo(10);
        assertThat(line.at(25, 101)).isEqualTo(12.5);
        assertThat(line.at(100, 101)).isEqualTo(20);
    }

    @Test
    void noCloudBelowTheLineAndNoWaterJustAboveIt() {
        SoftRegions mixed = new SoftRegions(WIDTH, HEIGHT, new float[RegionModel.KINDS][WIDTH * HEIGHT]);
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            mixed.share(Kind.FIXED)[p] = 0.2f;
            mixed.share(Kind.DRIFTING)[p] = 0.3f;
            mixed.share(Kind.FLOWING)[p] = 0.5f;
        }
        SoftRegions cut = new Horizon(22, 22).apply(mixed);
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int row = p / WIDTH;
            float cloud = cut.share(Kind.DRIFTING)[p];
            float water = cut.share(Kind.FLOWING)[p];
            assertThat(cut.share(Kind.FIXED)[p]).isEqualTo(0.2f);
            assertThat(cloud + water).isCloseTo(0.8f, within(1e-6f));
            if (row >= 23) {
                assertThat(cloud).isZero();
            } else if (row == 22) {
                assertThat(cloud).isBetween(0.1f, 0.7f); // the line halves the pixel
            } else if (row == 21) {
                assertThat(water).isZero();
            } else if (row < 10) {
                assertThat(water).isEqualTo(0.5f); // a waterfall may be there
            }
        }
        assertThat(mixed.share(Kind.DRIFTING)[40 * WIDTH]).isEqualTo(0.3f);
    }

    private static Horizon find(double left, double right, double partsMeet) {
        return Horizon.find(regions(partsMeet), light(left, right)).orElseThrow();
    }

    private static SoftRegions regions(double row) {
        float[][] share = new float[RegionModel.KINDS][WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int y = p / WIDTH;
            share[(y < row ? Kind.DRIFTING : Kind.FLOWING).column()][p] = 1;
        }
        return new SoftRegions(WIDTH, HEIGHT, share);
    }

    private static SoftRegions turned(SoftRegions regions) {
        float[][] share = regions.all().clone();
        share[Kind.DRIFTING.column()] = regions.share(Kind.FLOWING);
        share[Kind.FLOWING.column()] = regions.share(Kind.DRIFTING);
        return new SoftRegions(WIDTH, HEIGHT, share);
    }

    /** Sky of 0.5 over sea of 0.25; a pixel that the line crosses holds both. Row r is its pixels' middles. */
    private static float[] light(double left, double right) {
        float[] light = new float[WIDTH * HEIGHT];
        for (int p = 0; p < light.length; p++) {
            int y = p / WIDTH;
            double line = left + (right - left) * (p % WIDTH) / (WIDTH - 1);
            double sky = Math.max(0, Math.min(1, line - y + 0.5));
            light[p] = (float) (0.25 + 0.25 * sky);
        }
        return light;
    }
}
