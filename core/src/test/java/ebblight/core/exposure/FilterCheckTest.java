package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.CieLab;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pairs made from a filter that is known: light with it over light without it is gain + brighter scene − its stops. */
class FilterCheckTest {

    private static final int SIDE = 8;

    /** Takes {@code stops} in the middle and {@code corner} more at radius 1; red and blue lose that much more. */
    private static FilterPair pair(
            double stops,
            double corner,
            double redLoss,
            double blueLoss,
            double gain,
            double light,
            double lightRange) {
        int n = SIDE * SIDE;
        float[][] ratio = new float[3][n];
        int[] block = new int[n];
        float[] radius = new float[n];
        for (int i = 0; i < n; i++) {
            int row = i / SIDE;
            double x = (i % SIDE + 0.5) / SIDE - 0.5;
            double y = (row + 0.5) / SIDE - 0.5;
            radius[i] = (float) Math.sqrt(2 * (x * x + y * y));
            block[i] = i % SIDE / 2 + 4 * (row / 2);
            double green = gain + light - stops - corner * radius[i] * radius[i];
            ratio[0][i] = (float) (green - redLoss);
            ratio[1][i] = (float) green;
            ratio[2][i] = (float) (green - blueLoss);
        }
        return new FilterPair(gain, light, lightRange, 0, ratio, block, radius);
    }

    @Property(tries = 40)
    void findsTheFilterThatWasOnTheLens(
            @ForAll @DoubleRange(min = 1, max = 16) double stops,
            @ForAll @DoubleRange(min = -1, max = 1) double redLoss,
            @ForAll @DoubleRange(min = -1, max = 1) double blueLoss,
            @ForAll @DoubleRange(min = 0, max = 16) double gain,
            @ForAll @DoubleRange(min = -1, max = 1) double light) {
        FilterCheck check = FilterCheck.of(List.of(pair(stops, 0, redLoss, blueLoss, gain, light, 0)));
        assertThat(check.stops()).isCloseTo(stops, within(1e-4));
        assertThat(check.low()).isLessThan(stops);
        assertThat(check.high()).isGreaterThan(stops);
        assertThat(check.red()).isCloseTo(Math.pow(2, -redLoss), within(1e-4));
        assertThat(check.blue()).isCloseTo(Math.pow(2, -blueLoss), within(1e-4));
        assertThat(check.cornerStops()).isCloseTo(0, within(1e-4));
        assertThat(check.perPair()).hasSize(1);
        // the grey keeps its lightness, within what the change of white from D65 to D50 moves it
        assertThat(check.labShift().lightness()).isCloseTo(50, within(3.0));
    }

    /** A grey stays grey without a cast; less blue is yellow (b* above 0), less red is green or cyan (a* below 0). */
    @Test
    void theCastIsToldOnTheGreyOfHalfLightness() {
        CieLab none = FilterCheck.of(List.of(pair(6, 0, 0, 0, 6, 0, 0))).labShift();
        assertThat(none.lightness()).isCloseTo(50, within(0.01));
        assertThat(none.a()).isCloseTo(0, within(0.02));
        assertThat(none.b()).isCloseTo(0, within(0.02));
        assertThat(FilterCheck.of(List.of(pair(6, 0, 0, 0.5, 6, 0, 0)))
                        .labShift()
                        .b())
                .isGreaterThan(5);
        assertThat(FilterCheck.of(List.of(pair(6, 0, 0.5, 0, 6, 0, 0)))
                        .labShift()
                        .a())
                .isLessThan(-5);
    }

    /** A filter that darkens the corners is told by its middle; one that hardly does by all of the picture. */
    @Test
    void vignettingIsToldApartFromDensity() {
        FilterCheck dark = FilterCheck.of(List.of(pair(6, 0.5, 0, 0, 6, 0, 0)));
        assertThat(dark.stops()).isCloseTo(6, within(1e-3));
        assertThat(dark.cornerStops()).isCloseTo(0.5, within(1e-3));
        // radius² is 21/64 on average over 8 × 8 parts: 2 · (1 − 1/64)/12 · 2
        double mean = 2.0 * 2 * (1 - 1 / 64.0) / 12;
        FilterCheck slight = FilterCheck.of(List.of(pair(6, 0.04, 0, 0, 6, 0, 0)));
        assertThat(slight.stops()).isCloseTo(6 + 0.04 * mean, within(1e-4));
        assertThat(slight.cornerStops()).isCloseTo(0.04, within(1e-3));
        // brighter corners are no vignetting
        assertThat(FilterCheck.of(List.of(pair(6, -0.5, 0, 0, 6, 0, 0))).stops())
                .isCloseTo(6 - 0.5 * mean, within(1e-3));
    }

    /** The range is two standard deviations either way: 0.01 that nothing undercuts, and what the light may have done. */
    @Test
    void theRangeHoldsWhatIsNotKnown() {
        FilterCheck still = FilterCheck.of(List.of(pair(6, 0, 0, 0, 6, 0, 0)));
        assertThat(still.high() - still.stops()).isCloseTo(2 * 0.01, within(1e-4));
        assertThat(still.stops() - still.low()).isCloseTo(2 * 0.01, within(1e-4));
        FilterCheck changing = FilterCheck.of(List.of(pair(6, 0, 0, 0, 6, 0, 0.1)));
        assertThat(changing.high() - changing.stops()).isCloseTo(2 * Math.hypot(0.1, 0.01), within(1e-4));
        FilterPair plain = pair(6, 0, 0, 0, 6, 0, 0.1);
        FilterPair settings = new FilterPair(6, 0, 0.1, 0.2, plain.ratioStops(), plain.block(), plain.radius());
        FilterCheck both = FilterCheck.of(List.of(settings));
        assertThat(both.high() - both.stops())
                .isCloseTo(2 * Math.sqrt(0.1 * 0.1 + 0.2 * 0.2 + 0.01 * 0.01), within(1e-4));
    }

    /**
     * Two pairs of equal weight that say 6 and 6.5: 6.25, and since they scatter more than they claim, the error is that of
     * the scatter (Birge 1932, from memory): 0.5/√2 each way from the mean over √2, 0.25.
     */
    @Test
    void pairsThatDisagreeWidenTheRange() {
        FilterCheck two = FilterCheck.of(List.of(pair(6, 0, 0, 0, 6, 0, 0), pair(6.5, 0, 0, 0, 6, 0, 0)));
        assertThat(two.stops()).isCloseTo(6.25, within(1e-4));
        assertThat(two.high() - two.stops()).isCloseTo(2 * 0.25, within(1e-3));
        assertThat(two.perPair()).hasSize(2);
        assertThat(two.perPair().get(0)).isCloseTo(6, within(1e-4));
        assertThat(two.perPair().get(1)).isCloseTo(6.5, within(1e-4));
        // pairs that agree narrow it by the root of their number
        FilterCheck same = FilterCheck.of(List.of(pair(6, 0, 0, 0, 6, 0, 0), pair(6, 0, 0, 0, 6, 0, 0)));
        assertThat(same.high() - same.stops()).isCloseTo(2 * 0.01 / Math.sqrt(2), within(1e-4));
    }

    /** The better known pair counts more: errors of 0.1 and 0.2 weigh as four to one. */
    @Test
    void thePairThatIsKnownBetterCountsMore() {
        FilterCheck two = FilterCheck.of(List.of(
                pair(6, 0, 0.5, 0, 6, 0, Math.sqrt(0.01 - 1e-4)), pair(6.1, 0, 0, 0, 6, 0, Math.sqrt(0.04 - 1e-4))));
        assertThat(two.stops()).isCloseTo((4 * 6 + 6.1) / 5, within(1e-3));
        assertThat(two.red()).isCloseTo(Math.pow(2, -0.5 * 4 / 5), within(1e-3));
    }

    /** CIE 1976 (from memory): a difference below about 2.3 is just not seen; a* is red against green, b* yellow against blue. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, none to see",
        "2, 1, none to see",
        "3, 1, magenta",
        "-3, 1, green",
        "1, 3, warm",
        "1, -3, cold",
        "2, 2, warm"
    })
    void theCastHasAWord(double a, double b, String word) {
        FilterCheck check = new FilterCheck(6, 5.9, 6.1, 1, 1, new CieLab(50, a, b), 0, 0.1, List.of(6.0));
        assertThat(check.castWord()).isEqualTo(word);
    }

    @Test
    void pairsMustBeWhole() {
        FilterPair good = pair(6, 0, 0, 0, 6, 0, 0);
        float[][] ratio = good.ratioStops();
        assertThatThrownBy(() -> FilterCheck.of(List.of())).hasMessageContaining("one pair or more");
        assertThatThrownBy(() ->
                        new FilterPair(6, 0, 0, 0, new float[][] {ratio[0], ratio[1]}, good.block(), good.radius()))
                .hasMessageContaining("red, green and blue");
        assertThatThrownBy(() -> new FilterPair(
                        6, 0, 0, 0, new float[][] {ratio[0], new float[3], ratio[2]}, good.block(), good.radius()))
                .hasMessageContaining("red, green and blue");
        assertThatThrownBy(() -> new FilterPair(6, 0, 0, 0, ratio, good.block(), new float[3]))
                .hasMessageContaining("red, green and blue");
        int few = FilterPair.LEAST_PARTS;
        assertThat(new FilterPair(6, 0, 0, 0, new float[3][few], new int[few], new float[few]).parts())
                .isEqualTo(few);
        assertThatThrownBy(
                        () -> new FilterPair(6, 0, 0, 0, new float[3][few - 1], new int[few - 1], new float[few - 1]))
                .hasMessageContaining("24 parts or more");
        double[][] bad = {
            {Double.NaN, 0, 0, 0},
            {0, Double.POSITIVE_INFINITY, 0, 0},
            {0, 0, -1, 0},
            {0, 0, 0, -1},
            {0, 0, Double.NaN, 0}
        };
        for (double[] b : bad) {
            assertThatThrownBy(() -> new FilterPair(b[0], b[1], b[2], b[3], ratio, good.block(), good.radius()))
                    .hasMessageContaining("finite and ranges 0 or more");
        }
    }
}
