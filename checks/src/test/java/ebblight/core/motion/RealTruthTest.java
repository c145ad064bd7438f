package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * What real clips must yield. Masks drawn by hand (prototype/survey/truth_masks), frames of the same beach over six
 * minutes and clouds 12 s apart (data/README.md) are the truth; skipped where they are not on the machine.
 */
class RealTruthTest {

    @Test
    void regionsAreRightWithoutStrokesAndMoreSoWithOneAKind() throws IOException {
        double plain = 0;
        double stroked = 0;
        for (String name : RealTrial.MASKED) {
            RealTrial.Regions regions = RealTrial.regions(name, RegionModel.standard());
            System.out.printf("%s: %.3f, with strokes %.3f%n", name, regions.plain(), regions.stroked());
            plain += regions.plain() / RealTrial.MASKED.size();
            stroked += regions.stroked() / RealTrial.MASKED.size();
        }
        assertThat(plain).isGreaterThanOrEqualTo(0.80);
        assertThat(stroked).isGreaterThanOrEqualTo(0.90);
    }

    /** Weights fitted without the tested clip, and held to no others. */
    @Test
    void regionsOfAnUnseenClipAreNearlyAsRight() throws IOException {
        double plain = 0;
        double stroked = 0;
        for (RealTrial.Regions regions : RealTrial.leftOut(new AllCores())) {
            System.out.printf("left out: %.3f, with strokes %.3f%n", regions.plain(), regions.stroked());
            plain += regions.plain() / RealTrial.MASKED.size();
            stroked += regions.stroked() / RealTrial.MASKED.size();
        }
        assertThat(plain).isGreaterThanOrEqualTo(0.80);
        assertThat(stroked).isGreaterThanOrEqualTo(0.90);
    }

    /** To the decimals that stand in the program: the fit is the same on every machine but for rounding. */
    @Test
    void theWeightsAreThoseOfTheFit() throws IOException {
        double[][] fitted = RegionWeights.fitted(new AllCores());
        double[][] delivered = RegionModel.standard().weights();
        assertThat(fitted).hasDimensions(RegionModel.FEATURES + 1, RegionModel.KINDS);
        for (int r = 0; r < fitted.length; r++) {
            for (int c = 0; c < RegionModel.KINDS; c++) {
                assertThat(delivered[r][c]).isCloseTo(fitted[r][c], within(2e-3));
            }
        }
    }

    @Test
    void theFirstHalfOfTheWaterfallTellsTheWholeWithinAStop() throws IOException {
        double[] stops = RealTrial.waterfallFromItsHalf();
        System.out.println("waterfall from its half, stops: " + Arrays.toString(stops));
        for (double s : stops) {
            assertThat(s).isLessThanOrEqualTo(1);
        }
    }

    /**
     * Strands of falling water stay however long the exposure: common practice. Glass is less than half a code of 8
     * bits at mid grey, 1 %.
     */
    @Test
    void theWaterfallNeverReadsGlass() throws IOException {
        double least = RealTrial.waterfallAtItsSmoothest();
        System.out.println("waterfall at its smoothest: " + least);
        assertThat(least).isGreaterThan(0.01);
    }

    @Test
    void theBeachIsSurfAndItsRangeHoldsTheSixMinutes() throws IOException {
        RealTrial.Surf surf = RealTrial.surf();
        assertThat(surf.breakers()).isTrue();
        for (int k = 0; k < surf.frames().length; k++) {
            System.out.printf(
                    "surf, mean of %d: %.3f, likely %.3f to %.3f%n",
                    surf.frames()[k], surf.kept()[k], surf.low()[k], surf.high()[k]);
            assertThat(surf.kept()[k]).isBetween(surf.low()[k], surf.high()[k]);
        }
    }

    @Test
    void cloudsTwelveSecondsApartDriftAfterAtMostOneStroke() throws IOException {
        RealTrial.Sky plain = RealTrial.sky(Strokes.none());
        RealTrial.Sky drawn = RealTrial.sky(RealTrial.acrossTheSky());
        System.out.println("clouds: " + plain + ", with a stroke " + drawn);
        assertThat(drawn.drifting()).isGreaterThan(0.5);
        assertThat(drawn.told()).isTrue();
    }
}
