package ebblight.core.numeric;

import java.util.Arrays;
import java.util.Optional;

/**
 * The median of what was counted, and the range that holds the true one 19 times in 20 whatever the distribution: by
 * order statistics, the number of values below the median being binomial (Conover 1999, 3.2; from memory).
 *
 * @param count values that it stands on
 */
public record MedianRange(double median, double low, double high, int count) {

    /** Of fewer values not even smallest and largest hold the median 19 times in 20: 1 − 2 · 2⁻⁵ = 0.94. */
    public static final int FEWEST = 6;

    private static final double OUTSIDE = 0.05;
    /** Beyond it the normal distribution serves: off by less than one place. */
    private static final int MANY = 200;

    /** The median and its range; empty for fewer than {@link #FEWEST} values. */
    public static Optional<MedianRange> of(double... values) {
        int n = values.length;
        if (n < FEWEST) {
            return Optional.empty();
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int place = place(n);
        return Optional.of(
                new MedianRange(Quantiles.median(values.clone(), n), sorted[place - 1], sorted[n - place], n));
    }

    /** The largest place from either end, counted from 1, of which the two hold the median 19 times in 20. */
    static int place(int n) {
        if (n > MANY) {
            return (int) (0.5 * n - 0.98 * Math.sqrt(n));
        }
        double chance = StrictMath.exp(-n * StrictMath.log(2));
        double below = 0;
        int place = 0;
        while (2 * (below + chance) <= OUTSIDE) {
            below += chance;
            place++;
            chance *= (n - place + 1.0) / place;
        }
        return place;
    }
}
