package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Values between samples, smaller planes, quantiles and spectra against their definitions. */
class ResamplePropertyTest {

    @Property(tries = 60)
    void betweenSamplesRunStraightLines(
            @ForAll @IntRange(min = 1, max = 9) int width,
            @ForAll @IntRange(min = 1, max = 9) int height,
            @ForAll @DoubleRange(min = -25, max = 25) double x,
            @ForAll @DoubleRange(min = -25, max = 25) double y) {
        float[] plane = Planes.noise(width, height, 5);
        double sum = 0;
        for (int dy = 0; dy < 2; dy++) {
            for (int dx = 0; dx < 2; dx++) {
                int u = (int) Math.floor(x) + dx;
                int v = (int) Math.floor(y) + dy;
                double weight = (1 - Math.abs(x - u)) * (1 - Math.abs(y - v));
                sum += weight * plane[Planes.reflected(v, height) * width + Planes.reflected(u, width)];
            }
        }
        assertThat(Resample.mirrored(plane, width, height, x, y)).isCloseTo(sum, within(1e-6));
    }

    @Property(tries = 40)
    void anAreaMeanIsThatOfFinePieces(
            @ForAll @IntRange(min = 1, max = 13) int width,
            @ForAll @IntRange(min = 1, max = 11) int height,
            @ForAll @IntRange(min = 1, max = 13) int wanted) {
        int newWidth = Math.min(wanted, width);
        int newHeight = Math.min(wanted, height);
        float[] plane = Planes.noise(width, height, 6);
        float[] small = new float[newWidth * newHeight];
        Resample.area(plane, width, height, small, newWidth, newHeight);
        // newWidth pieces a column and newHeight a row divide both grids without remainder
        for (int v = 0; v < newHeight; v++) {
            for (int u = 0; u < newWidth; u++) {
                double sum = 0;
                for (int j = v * height; j < (v + 1) * height; j++) {
                    for (int i = u * width; i < (u + 1) * width; i++) {
                        sum += plane[j / newHeight * width + i / newWidth];
                    }
                }
                assertThat((double) small[v * newWidth + u]).isCloseTo(sum / (width * height), within(1e-6));
            }
        }
    }

    @Property(tries = 20)
    void cubicWeightsGiveParabolasBack(@ForAll @DoubleRange(min = 0, max = 1) double past) {
        // Keys 1981: with a = −½ the error is of third order, so second-degree polynomials are exact
        double[] weights = new double[4];
        Resample.cubicWeights(past, weights);
        double value = 0;
        for (int k = 0; k < 4; k++) {
            double at = k - 1;
            value += weights[k] * (2 * at * at - 3 * at + 1);
        }
        assertThat(value).isCloseTo(2 * past * past - 3 * past + 1, within(1e-12));
    }

    @Property(tries = 200)
    void aQuantileLeavesItsShareBelow(
            @ForAll @IntRange(min = 1, max = 90) int count,
            @ForAll @DoubleRange(min = 0, max = 1) double q,
            @ForAll @IntRange(min = 1, max = 90) int levels) {
        // Hyndman and Fan 1996, type 7: the (k−1)/(n−1) quantile is the k-th smallest value, straight lines between
        double[] values = new SplittableRandom(count + 100L * levels)
                .doubles(count)
                .map(v -> Math.floor(v * levels))
                .toArray();
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double at = q * (count - 1);
        double below = sorted[(int) Math.floor(at)];
        double above = sorted[(int) Math.ceil(at)];
        double wanted = below + (above - below) * (at - Math.floor(at));
        float[] single = new float[count];
        for (int k = 0; k < count; k++) {
            single[k] = (float) values[k];
        }
        float[] before = single.clone();
        assertThat(Quantiles.quantile(single, count, q)).isCloseTo(wanted, within(1e-12));
        assertThat(single).isEqualTo(before);
        assertThat(Quantiles.quantile(values, count, q)).isCloseTo(wanted, within(1e-12));
        Arrays.sort(values);
        assertThat(values).as("only reordered").isEqualTo(sorted);
    }

    /** Smooth light rises and falls: whoever compares with the ends and the middle needs a second for every thousand. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.25, 0.5, 1})
    void smoothSlopesHaveQuantilesToo(double q) {
        int n = 2_000_001;
        double[] slope = new double[n];
        for (int i = 0; i < n; i++) {
            slope[i] = Math.min(i, n - 1 - i);
        }
        // each value but the largest comes twice
        assertThat(Quantiles.quantile(slope, n, q)).isCloseTo(q * (n - 1) / 2, within(0.5));
    }

    @Property(tries = 12)
    void theFastTransformIsTheSlowOne(@ForAll @IntRange(min = 1, max = 7) int power) {
        int n = 1 << power;
        double[] re = new SplittableRandom(n).doubles(n).toArray();
        double[] im = new SplittableRandom(n + 1).doubles(n).toArray();
        double[] fastRe = re.clone();
        double[] fastIm = im.clone();
        Fourier.of(n).transform(fastRe, fastIm, 0, 1, false);
        for (int k = 0; k < n; k++) {
            double sumRe = 0;
            double sumIm = 0;
            for (int j = 0; j < n; j++) {
                double angle = -2 * Math.PI * j * k / n;
                sumRe += re[j] * Math.cos(angle) - im[j] * Math.sin(angle);
                sumIm += re[j] * Math.sin(angle) + im[j] * Math.cos(angle);
            }
            assertThat(fastRe[k]).isCloseTo(sumRe, within(1e-9));
            assertThat(fastIm[k]).isCloseTo(sumIm, within(1e-9));
        }
        Fourier.of(n).transform(fastRe, fastIm, 0, 1, true);
        assertThat(fastRe[0] / n).isCloseTo(re[0], within(1e-9));
    }
}
