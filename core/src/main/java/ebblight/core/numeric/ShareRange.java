package ebblight.core.numeric;

/**
 * A share that was counted, and the range that holds the true one about 19 times in 20 (Wilson 1927, score interval).
 *
 * @param share of the cases, 0 to 1
 * @param count cases that it stands on
 */
public record ShareRange(double share, double low, double high, int count) {

    private static final double Z = 1.959964; // of the normal distribution, 97.5 %

    /** The share of {@code yes} among {@code count} cases, 1 or more. */
    public static ShareRange of(int yes, int count) {
        if (count < 1 || yes < 0 || yes > count) {
            throw new IllegalArgumentException("need 0 to count of 1 or more cases, had " + yes + " of " + count);
        }
        double p = (double) yes / count;
        double widening = 1 + Z * Z / count;
        double middle = (p + Z * Z / (2 * count)) / widening;
        double half = Z * Math.sqrt(p * (1 - p) / count + Z * Z / (4.0 * count * count)) / widening;
        return new ShareRange(p, Math.max(0, middle - half), Math.min(1, middle + half), count);
    }
}
