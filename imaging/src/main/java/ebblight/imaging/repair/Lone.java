package ebblight.imaging.repair;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/**
 * How far each sample of a plane stands above the median of the 24 round it, and how far samples usually do: the noise,
 * from the middle half of these differences (a normal distribution's quartiles lie 1.349 standard deviations apart).
 */
final class Lone {

    private static final double QUARTILES = 1.349;
    private static final int SAMPLED = 40_000;

    private final float[] above;
    private final double noise;

    private Lone(float[] above, double noise) {
        this.above = above;
        this.noise = noise;
    }

    static Lone of(float[] plane, int width, int height, Work work) {
        float[] above = new float[plane.length];
        work.forEach(height, y -> {
            float[] near = new float[24];
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                above[i] = (float) (plane[i] - round(plane, width, height, x, y, near));
            }
        });
        return new Lone(above, noise(above));
    }

    /** Median of the samples round a place, itself left out. */
    static double round(float[] plane, int width, int height, int x, int y, float[] near) {
        int n = 0;
        for (int v = Math.max(0, y - 2); v <= Math.min(height - 1, y + 2); v++) {
            for (int u = Math.max(0, x - 2); u <= Math.min(width - 1, x + 2); u++) {
                if (u != x || v != y) {
                    near[n++] = plane[v * width + u];
                }
            }
        }
        return Quantiles.median(near, n);
    }

    /** Of few different values (8 bits, dark) the quartiles coincide: then the spread without the outermost hundredth. */
    private static double noise(float[] above) {
        int step = Math.max(1, above.length / SAMPLED);
        double[] sample = new double[(above.length + step - 1) / step];
        for (int k = 0; k < sample.length; k++) {
            sample[k] = above[k * step];
        }
        double low = Quantiles.quantile(sample, sample.length, 0.25);
        double high = Quantiles.quantile(sample, sample.length, 0.75);
        if (high > low) {
            return (high - low) / QUARTILES;
        }
        double from = Quantiles.quantile(sample, sample.length, 0.005);
        double to = Quantiles.quantile(sample, sample.length, 0.995);
        double sum = 0;
        int n = 0;
        for (double v : sample) {
            if (v >= from && v <= to) {
                sum += v * v;
                n++;
            }
        }
        return Math.sqrt(sum / n);
    }

    /** By how much sample {@code i} stands above those round it. */
    double above(int i) {
        return above[i];
    }

    /** One standard deviation of {@link #above} where nothing stands out. */
    double noise() {
        return noise;
    }
}
