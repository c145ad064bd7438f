package ebblight.imaging;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * By what the light of one picture must be multiplied to be that of another of the same view: for each colour the median
 * ratio over what stands still, or over where both meet when too little does. Dark and clipped places do not count.
 */
final class LightMatch {

    private static final double DARKEST = 0.003;
    private static final double BRIGHTEST = 0.9;
    private static final double LEAST_PLACES = 0.01;
    private static final double MEETING = 0.05;

    private final Reduced reduced;
    private final float[][] reference;
    private final float[] still;
    private final Work work;

    /**
     * Compares with {@code reference}.
     *
     * @param still what stands still, 0 to 1, on the grid of {@code reduced}
     */
    LightMatch(Reduced reduced, IntToDoubleFunction reference, float[] still, Work work) {
        this.reduced = reduced;
        this.still = still;
        this.work = work;
        this.reference = planes(reference);
    }

    private float[][] planes(IntToDoubleFunction light) {
        float[][] planes = new float[3][];
        for (int c = 0; c < 3; c++) {
            int channel = c;
            planes[c] = reduced.of(p -> light.applyAsDouble(3 * p + channel), work);
        }
        return planes;
    }

    /**
     * Gains of red, green, blue.
     *
     * @param share where {@code light} is going to show, 0 to 1, on the same grid
     */
    double[] gains(IntToDoubleFunction light, float[] share) {
        float[][] planes = planes(light);
        double[] gains = gains(planes, still, 0.99);
        if (gains.length > 0) {
            return gains;
        }
        float[] meeting = new float[share.length];
        for (int p = 0; p < share.length; p++) {
            meeting[p] = share[p] > MEETING && share[p] < 1 - MEETING ? 1 : 0;
        }
        double[] atEdges = gains(planes, meeting, 0.5);
        return atEdges.length > 0 ? atEdges : new double[] {1, 1, 1};
    }

    private double[] gains(float[][] planes, float[] where, double least) {
        double[] gains = new double[3];
        for (int c = 0; c < 3; c++) {
            double[] ratios = new double[where.length];
            int n = 0;
            for (int p = 0; p < where.length; p++) {
                float a = reference[c][p];
                float b = planes[c][p];
                if (where[p] >= least && a > DARKEST && a < BRIGHTEST && b > DARKEST && b < BRIGHTEST) {
                    ratios[n++] = a / (double) b;
                }
            }
            if (n < LEAST_PLACES * where.length) {
                return new double[0];
            }
            gains[c] = Quantiles.median(Arrays.copyOf(ratios, n), n);
        }
        return gains;
    }
}
