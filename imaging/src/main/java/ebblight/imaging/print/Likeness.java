package ebblight.imaging.print;

import java.util.Arrays;

/**
 * How alike two planes of 0 to 255 are: SSIM (Wang, Bovik, Sheikh, Simoncelli 2004: windows of 11 × 11 weighted by a
 * Gaussian of 1.5 pixels, K 0.01 and 0.03, whole windows only) and the ratio of peak to noise in decibels.
 */
public final class Likeness {

    private static final int RADIUS = 5;
    private static final double SIGMA = 1.5;
    private static final double PEAK = 255;
    private static final double C1 = 0.01 * PEAK * (0.01 * PEAK);
    private static final double C2 = 0.03 * PEAK * (0.03 * PEAK);

    private Likeness() {}

    /** Mean structural similarity, 1 for the same; planes of 11 pixels or more on each side. */
    public static double ssim(float[] one, float[] other, int width, int height) {
        if (width <= 2 * RADIUS || height <= 2 * RADIUS) {
            throw new IllegalArgumentException("SSIM needs 11 × 11 pixels, had " + width + " × " + height);
        }
        double[] taps = taps();
        int side = 2 * RADIUS + 1;
        double[][] rows = new double[side][];
        double sum = 0;
        for (int y = 0; y < height; y++) {
            rows[y % side] = row(one, other, y * width, width, taps);
            if (y >= 2 * RADIUS) {
                sum += windows(rows, y, width - 2 * RADIUS, taps);
            }
        }
        return sum / ((double) (width - 2 * RADIUS) * (height - 2 * RADIUS));
    }

    /** Means of a, b, a², b², ab along a row, window after window. */
    private static double[] row(float[] one, float[] other, int at, int width, double[] taps) {
        int count = width - 2 * RADIUS;
        double[] means = new double[5 * count];
        for (int x = 0; x < count; x++) {
            for (int k = 0; k < taps.length; k++) {
                double a = one[at + x + k];
                double b = other[at + x + k];
                means[5 * x] += taps[k] * a;
                means[5 * x + 1] += taps[k] * b;
                means[5 * x + 2] += taps[k] * a * a;
                means[5 * x + 3] += taps[k] * b * b;
                means[5 * x + 4] += taps[k] * a * b;
            }
        }
        return means;
    }

    /** Sum of the index over the windows whose last row is {@code y}. */
    private static double windows(double[][] rows, int y, int count, double[] taps) {
        double sum = 0;
        double[] m = new double[5];
        for (int x = 0; x < count; x++) {
            Arrays.fill(m, 0);
            for (int k = 0; k < taps.length; k++) {
                double[] row = rows[(y - 2 * RADIUS + k) % taps.length];
                for (int i = 0; i < 5; i++) {
                    m[i] += taps[k] * row[5 * x + i];
                }
            }
            double both = m[0] * m[1];
            double squares = m[0] * m[0] + m[1] * m[1];
            sum += (2 * both + C1) * (2 * (m[4] - both) + C2) / ((squares + C1) * (m[2] + m[3] - squares + C2));
        }
        return sum;
    }

    private static double[] taps() {
        double[] taps = new double[2 * RADIUS + 1];
        double sum = 0;
        for (int k = 0; k < taps.length; k++) {
            taps[k] = StrictMath.exp(-0.5 * (k - RADIUS) * (k - RADIUS) / (SIGMA * SIGMA));
            sum += taps[k];
        }
        for (int k = 0; k < taps.length; k++) {
            taps[k] /= sum;
        }
        return taps;
    }

    /** Peak over noise in decibels; infinite for the same. */
    public static double decibels(float[] one, float[] other) {
        double squares = 0;
        for (int p = 0; p < one.length; p++) {
            double d = one[p] - (double) other[p];
            squares += d * d;
        }
        return 10 * StrictMath.log10(PEAK * PEAK * one.length / squares);
    }
}
