package ebblight.imaging.finish;

import ebblight.core.numeric.Quantiles;
import java.util.Arrays;

/**
 * Noise measured on the picture itself: the white part of blocks of 16 pixels (Immerkær 1996), the calmest tenth in eight
 * classes of luminance. Texture only adds, so this is an upper bound; what a JPEG smoothed away is not seen.
 */
final class GrainEstimate {

    private static final int BLOCK = 16;
    private static final int CLASSES = 8;
    private static final double CALM = 0.1;
    /** Sum of squares of the mask [1 −2 1] by [1 −2 1]. */
    private static final double MASK = 36;

    /**
     * A lowest tenth over the true variance: a block holds about 256/3.78 independent values (Σρ² of the mask is 1.944 in
     * each direction), so its variance scatters by √(2/68), and the lowest tenth lies 1.28 of that below.
     */
    private static final double LOWEST_TENTH = 0.78;

    private GrainEstimate() {}

    static Grain of(float[] y, int width, int height) {
        int columns = width / BLOCK;
        int rows = height / BLOCK;
        int blocks = columns * rows;
        if (blocks < 2 * CLASSES) {
            return new Grain(0, 0, "not measured: the picture is too small");
        }
        double[] mean = new double[blocks];
        double[] variance = new double[blocks];
        for (int k = 0; k < blocks; k++) {
            block(y, width, k % columns * BLOCK, k / columns * BLOCK, k, mean, variance);
        }
        double[] sorted = mean.clone();
        Arrays.sort(sorted);
        double[] at = new double[CLASSES];
        double[] calm = new double[CLASSES];
        for (int c = 0; c < CLASSES; c++) {
            double low = sorted[c * blocks / CLASSES];
            double high = c + 1 < CLASSES ? sorted[(c + 1) * blocks / CLASSES] : Double.MAX_VALUE;
            double[] inside = new double[blocks];
            int n = 0;
            double sum = 0;
            for (int k = 0; k < blocks; k++) {
                if (mean[k] >= low && mean[k] < high) {
                    inside[n++] = variance[k];
                    sum += mean[k];
                }
            }
            at[c] = n == 0 ? low : sum / n;
            calm[c] = n == 0 ? Double.NaN : Quantiles.quantile(inside, n, CALM) / LOWEST_TENTH;
        }
        return line(at, calm, "the picture's own calm places");
    }

    private static void block(float[] y, int width, int left, int top, int k, double[] mean, double[] variance) {
        double sum = 0;
        double squares = 0;
        int inner = 0;
        for (int v = top; v < top + BLOCK; v++) {
            for (int u = left; u < left + BLOCK; u++) {
                int p = v * width + u;
                sum += y[p];
                if (v > top && v < top + BLOCK - 1 && u > left && u < left + BLOCK - 1) {
                    double white = y[p - width - 1]
                            - 2.0 * y[p - width]
                            + y[p - width + 1]
                            - 2 * (y[p - 1] - 2.0 * y[p] + y[p + 1])
                            + y[p + width - 1]
                            - 2.0 * y[p + width]
                            + y[p + width + 1];
                    squares += white * white;
                    inner++;
                }
            }
        }
        mean[k] = sum / (BLOCK * BLOCK);
        variance[k] = squares / (MASK * inner);
    }

    /** The straight line of least squares, its slope and its value at black not below 0. */
    static Grain line(double[] at, double[] calm, String source) {
        double n = 0;
        double x = 0;
        double v = 0;
        double xx = 0;
        double xv = 0;
        for (int c = 0; c < at.length; c++) {
            if (calm[c] >= 0) {
                n++;
                x += at[c];
                v += calm[c];
                xx += at[c] * at[c];
                xv += at[c] * calm[c];
            }
        }
        double spread = xx - x * x / n;
        double slope = spread > 0 ? Math.max(0, (xv - x * v / n) / spread) : 0;
        double floor = (v - slope * x) / n;
        if (floor < 0) {
            return new Grain(xx > 0 ? xv / xx : 0, 0, source);
        }
        return new Grain(slope, floor, source);
    }
}
