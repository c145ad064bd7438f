package ebblight.pocket.exact;

/** The two halves of a double, by which the methods of fdlibm choose their way. */
final class Words {

    private static final long LOW = 0xFFFF_FFFFL;

    private Words() {}

    static int high(double x) {
        return (int) (Double.doubleToRawLongBits(x) >>> 32);
    }

    /** The upper half without the sign: grows with the size of x. */
    static int size(double x) {
        return high(x) & 0x7FFF_FFFF;
    }

    static double withHigh(double x, int high) {
        return Double.longBitsToDouble(((long) high << 32) | (Double.doubleToRawLongBits(x) & LOW));
    }

    /** Without the lower half of its bits. */
    static double head(double x) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(x) & ~LOW);
    }

    /** x · 2^k by its exponent alone. */
    static double scaled(double x, int k) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(x) + ((long) k << 52));
    }
}
