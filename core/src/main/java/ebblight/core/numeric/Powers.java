package ebblight.core.numeric;

/**
 * Powers and logarithms by {@link StrictMath} exp and log only, so that the desk and the phone page compute the same
 * bits. Relative error of {@link #pow} below 1e-13 for results between 1e-30 and 1e30.
 */
public final class Powers {

    private static final double LN_2 = StrictMath.log(2);

    private Powers() {}

    /** Base-2 logarithm of a positive number. */
    public static double log2(double x) {
        return StrictMath.log(x) / LN_2;
    }

    /** Two to the power {@code x}; exact for whole {@code x} between −1022 and 1023. */
    public static double exp2(double x) {
        double whole = Math.floor(x);
        if (whole == x && whole >= Double.MIN_EXPONENT && whole <= Double.MAX_EXPONENT) {
            return Double.longBitsToDouble(((long) whole + Double.MAX_EXPONENT) << 52);
        }
        return StrictMath.exp(x * LN_2);
    }

    /** {@code base} to the power {@code exponent} for a base of zero or more; 0 for base 0. */
    public static double pow(double base, double exponent) {
        if (base < 0) {
            throw new IllegalArgumentException("base must be 0 or more, was " + base);
        }
        if (base == 0) {
            return exponent == 0 ? 1 : 0;
        }
        return StrictMath.exp(exponent * StrictMath.log(base));
    }
}
