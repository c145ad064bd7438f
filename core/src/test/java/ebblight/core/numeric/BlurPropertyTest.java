package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;

/** The fast blurs against sums over every neighbour. */
class BlurPropertyTest {

    private static final Offset<Double> ROUNDING = within(2e-6);

    @Property(tries = 60)
    void theGaussianIsTheSumOverItsNeighbours(
            @ForAll @IntRange(min = 1, max = 23) int width,
            @ForAll @IntRange(min = 1, max = 19) int height,
            @ForAll @DoubleRange(min = 0.3, max = 4) double sigma) {
        float[] plane = Planes.noise(width, height, width * 31L + height);
        float[] blurred = new float[plane.length];
        Blur.gaussian(plane, blurred, new float[plane.length], width, height, sigma);
        int radius = Math.max(1, (int) Math.round(4 * sigma));
        double[] kernel = new double[2 * radius + 1];
        for (int i = -radius; i <= radius; i++) {
            kernel[i + radius] = Math.exp(-0.5 * i * i / (sigma * sigma));
        }
        for (int p = 0; p < plane.length; p++) {
            assertThat((double) blurred[p])
                    .isCloseTo(Planes.weighted(plane, width, height, p % width, p / width, kernel), ROUNDING);
        }
    }

    @Property(tries = 60)
    void theBoxIsTheMeanOverItsSquare(
            @ForAll @IntRange(min = 1, max = 23) int width,
            @ForAll @IntRange(min = 1, max = 19) int height,
            @ForAll @IntRange(min = 0, max = 9) int radius) {
        float[] plane = Planes.noise(width, height, width * 37L + height);
        float[] blurred = new float[plane.length];
        Blur.box(plane, blurred, new float[plane.length], width, height, radius);
        double[] kernel = new double[2 * radius + 1];
        Arrays.fill(kernel, 1);
        for (int p = 0; p < plane.length; p++) {
            assertThat((double) blurred[p])
                    .isCloseTo(Planes.weighted(plane, width, height, p % width, p / width, kernel), ROUNDING);
        }
    }

    @Property(tries = 20)
    void wideGaussiansHaveTheirWidthAndNearlyTheirShape(@ForAll @DoubleRange(min = 4.1, max = 30) double sigma) {
        int size = 2 * (int) Math.ceil(5 * sigma) + 1;
        float[] point = new float[size * size];
        int middle = size / 2;
        point[middle * size + middle] = 1;
        float[] blurred = new float[point.length];
        Blur.gaussian(point, blurred, new float[point.length], size, size, sigma);
        double peak = 1 / (2 * Math.PI * sigma * sigma);
        for (int x = 0; x < size; x++) {
            double d = x - middle;
            assertThat((double) blurred[middle * size + x])
                    .isCloseTo(peak * Math.exp(-0.5 * d * d / (sigma * sigma)), within(0.072 * peak));
        }
        double sum = 0;
        double square = 0;
        for (int p = 0; p < blurred.length; p++) {
            double d = p % size - middle;
            sum += blurred[p];
            square += blurred[p] * d * d;
        }
        assertThat(sum).isCloseTo(1, within(1e-4));
        assertThat(square).isCloseTo(sigma * sigma, within(2e-3 * sigma * sigma));
    }

    @Property(tries = 30)
    void theGuidedFilterIsItsDefinition(
            @ForAll @IntRange(min = 2, max = 15) int width,
            @ForAll @IntRange(min = 2, max = 13) int height,
            @ForAll @IntRange(min = 1, max = 4) int radius) {
        // He, Sun, Tang 2010, equations 5 to 8: a = cov(I, p) / (var I + ε), b = mean p − a mean I, q = mean a · I +
        // mean b
        float[] plane = Planes.noise(width, height, 3);
        float[] guide = Planes.noise(width, height, 4);
        float[] filtered = new float[plane.length];
        double epsilon = 0.01;
        Guided.filter(plane, guide, filtered, width, height, radius, epsilon);
        double[] kernel = new double[2 * radius + 1];
        Arrays.fill(kernel, 1);
        int n = plane.length;
        float[] both = new float[n];
        float[] square = new float[n];
        for (int p = 0; p < n; p++) {
            both[p] = guide[p] * plane[p];
            square[p] = guide[p] * guide[p];
        }
        float[] a = new float[n];
        float[] b = new float[n];
        for (int p = 0; p < n; p++) {
            double mg = Planes.weighted(guide, width, height, p % width, p / width, kernel);
            double mp = Planes.weighted(plane, width, height, p % width, p / width, kernel);
            double covariance = Planes.weighted(both, width, height, p % width, p / width, kernel) - mg * mp;
            double variance = Planes.weighted(square, width, height, p % width, p / width, kernel) - mg * mg;
            double slope = covariance / (variance + epsilon);
            a[p] = (float) slope;
            b[p] = (float) (mp - slope * mg);
        }
        for (int p = 0; p < n; p++) {
            double slope = Planes.weighted(a, width, height, p % width, p / width, kernel);
            double offset = Planes.weighted(b, width, height, p % width, p / width, kernel);
            assertThat((double) filtered[p]).isCloseTo(slope * guide[p] + offset, within(2e-4));
        }
    }
}
