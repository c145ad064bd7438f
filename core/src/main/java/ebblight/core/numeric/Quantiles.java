package ebblight.core.numeric;

import java.util.Arrays;

/** Quantiles with straight lines between the sorted values (Hyndman and Fan 1996, type 7). Arrays are reordered. */
public final class Quantiles {

    private Quantiles() {}

    /** The quantile {@code q} (0 to 1) of the first {@code count} values, which are sorted in place. */
    public static double quantile(double[] values, int count, double q) {
        if (count < 1 || !(q >= 0 && q <= 1)) {
            throw new IllegalArgumentException("need a value or more and 0 ≤ q ≤ 1, had " + count + " and " + q);
        }
        Arrays.sort(values, 0, count);
        double at = q * (count - 1);
        int below = (int) at;
        double share = at - below;
        return below + 1 < count ? values[below] + share * (values[below + 1] - values[below]) : values[below];
    }

    /** The quantile {@code q} (0 to 1) of the first {@code count} values, which are sorted in place. */
    public static double quantile(float[] values, int count, double q) {
        if (count < 1 || !(q >= 0 && q <= 1)) {
            throw new IllegalArgumentException("need a value or more and 0 ≤ q ≤ 1, had " + count + " and " + q);
        }
        Arrays.sort(values, 0, count);
        double at = q * (count - 1);
        int below = (int) at;
        double share = at - below;
        return below + 1 < count ? values[below] + share * (values[below + 1] - values[below]) : values[below];
    }

    /** The median of the first {@code count} values, which are sorted in place. */
    public static double median(double[] values, int count) {
        return quantile(values, count, 0.5);
    }

    /** The median of the first {@code count} values, which are sorted in place. */
    public static double median(float[] values, int count) {
        return quantile(values, count, 0.5);
    }
}
