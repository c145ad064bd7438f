package ebblight.core.numeric;

/**
 * Rounding to whole numbers, written out: compiled for browsers, {@code Math.rint} and {@code Math.round} take halves away
 * from zero, and the same clip would be measured differently there.
 */
public final class Rounding {

    private Rounding() {}

    /** The nearest whole number, of two equally near the even one: as {@code Math.rint} on the JVM. */
    public static double even(double value) {
        double below = Math.floor(value);
        double above = value - below;
        boolean up = above > 0.5 || (above == 0.5 && below % 2 != 0);
        return up ? below + 1 : below;
    }

    /** The nearest whole number, of two equally near the greater one: as {@code Math.round} on the JVM. */
    public static long up(double value) {
        double below = Math.floor(value);
        return (long) (value - below >= 0.5 ? below + 1 : below);
    }
}
