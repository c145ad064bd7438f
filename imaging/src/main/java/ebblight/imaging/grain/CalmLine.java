package ebblight.imaging.grain;

import ebblight.core.numeric.Quantiles;
import java.util.Arrays;

/** A straight line of variance over luminance through the calmest tenth of blocks in eight classes of luminance. */
final class CalmLine {

    static final int CLASSES = 8;
    private static final double CALM = 0.1;

    private CalmLine() {}

    /**
     * The line.
     *
     * @param lowestTenth what chance makes of a lowest tenth, as a part of the true variance
     */
    static Grain of(double[] mean, double[] variance, double lowestTenth, String source) {
        int blocks = mean.length;
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
            calm[c] = n == 0 ? Double.NaN : Quantiles.quantile(inside, n, CALM) / lowestTenth;
        }
        return fitted(at, calm, source);
    }

    /** Least squares, the slope and the value at black not below 0. */
    private static Grain fitted(double[] at, double[] calm, String source) {
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
        return floor < 0 ? new Grain(xx > 0 ? xv / xx : 0, 0, source) : new Grain(slope, floor, source);
    }
}
