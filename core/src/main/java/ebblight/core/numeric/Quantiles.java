package ebblight.core.numeric;

/** Quantiles with straight lines between the values in order (Hyndman and Fan 1996, type 7). */
public final class Quantiles {

    private Quantiles() {}

    /** The quantile {@code q} (0 to 1) of the first {@code count} values, which are reordered. None may be NaN. */
    public static double quantile(double[] values, int count, double q) {
        if (count < 1 || !(q >= 0 && q <= 1)) {
            throw new IllegalArgumentException("need a value or more and 0 ≤ q ≤ 1, had " + count + " and " + q);
        }
        double at = q * (count - 1);
        int below = (int) at;
        double value = select(values, count, below);
        if (below + 1 == count) {
            return value;
        }
        double above = values[below + 1];
        for (int k = below + 2; k < count; k++) {
            above = Math.min(above, values[k]);
        }
        return value + (at - below) * (above - value);
    }

    /** The quantile {@code q} (0 to 1) of the first {@code count} values, which stay as they are. None may be NaN. */
    public static double quantile(float[] values, int count, double q) {
        double[] copy = new double[count];
        for (int k = 0; k < count; k++) {
            copy[k] = values[k];
        }
        return quantile(copy, count, q);
    }

    /** The median of the first {@code count} values, which are reordered. None may be NaN. */
    public static double median(double[] values, int count) {
        return quantile(values, count, 0.5);
    }

    /** The median of the first {@code count} values, which stay as they are. None may be NaN. */
    public static double median(float[] values, int count) {
        return quantile(values, count, 0.5);
    }

    /**
     * Moves the value that would stand at {@code place} in order there, none larger before it and none smaller after
     * it (Hoare 1961, Algorithm 65). What it compares with are values from scattered places: those of pictures rise and
     * fall smoothly, and any fixed place could be an end of theirs every time.
     */
    private static double select(double[] values, int count, int place) {
        int low = 0;
        int high = count - 1;
        int dice = count;
        while (low < high) {
            double[] three = new double[3];
            for (int k = 0; k < 3; k++) {
                dice = 1_664_525 * dice + 1_013_904_223;
                three[k] = values[low + (dice >>> 1) % (high - low + 1)];
            }
            double pivot = Math.max(Math.min(three[0], three[1]), Math.min(Math.max(three[0], three[1]), three[2]));
            int left = low;
            int right = high;
            while (left <= right) {
                while (values[left] < pivot) {
                    left++;
                }
                while (values[right] > pivot) {
                    right--;
                }
                if (left <= right) {
                    double swap = values[left];
                    values[left++] = values[right];
                    values[right--] = swap;
                }
            }
            if (place <= right) {
                high = right;
            } else if (place >= left) {
                low = left;
            } else {
                break;
            }
        }
        return values[place];
    }
}
