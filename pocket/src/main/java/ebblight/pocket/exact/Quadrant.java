package ebblight.pocket.exact;

/**
 * An angle less the multiple of π/2 that is nearest to it (fdlibm 5.3, e_rem_pio2.c), as the sum of two doubles.
 *
 * @param number the multiple that was taken away
 */
record Quadrant(int number, double head, double tail) {

    /** The largest angle that is taken apart here, 2¹⁹ · π/2 by the upper half of its bits; about 823,549. */
    static final int LARGEST = 0x413921FB;

    private static final int THREE_QUARTERS_PI = 0x4002D97C;
    private static final int HALF_PI = 0x3FF921FB;
    private static final int LISTED = 32;
    private static final double TWO_BY_PI = 0.6366197723675814;

    // π/2 in three parts of 33 bits, each with what is left after it
    private static final double FIRST = 1.5707963267341256;
    private static final double FIRST_REST = 6.077100506506192E-11;
    private static final double SECOND = 6.077100506303966E-11;
    private static final double SECOND_REST = 2.0222662487959506E-21;
    private static final double THIRD = 2.0222662487111665E-21;
    private static final double THIRD_REST = 8.4784276603689E-32;

    /** Of an angle beyond ±π/4 and within {@link #LARGEST}, in radians. */
    static Quadrant of(double x) {
        int size = Words.size(x);
        Quadrant positive = size < THREE_QUARTERS_PI ? first(Math.abs(x), size) : any(Math.abs(x), size);
        return x > 0 ? positive : new Quadrant(-positive.number, -positive.head, -positive.tail);
    }

    private static Quadrant first(double x, int size) {
        double z = x - FIRST;
        double rest = FIRST_REST;
        if (size == HALF_PI) {
            z -= SECOND;
            rest = SECOND_REST;
        }
        double head = z - rest;
        return new Quadrant(1, head, (z - head) - rest);
    }

    private static Quadrant any(double x, int size) {
        int n = (int) (x * TWO_BY_PI + 0.5);
        double r = x - n * FIRST;
        double w = n * FIRST_REST;
        double head = r - w;
        // away from multiples of π/2 the first part is enough
        if (n >= LISTED || size == Words.high(n * (Math.PI / 2))) {
            if (lost(size, head) > 16) {
                double t = r;
                w = n * SECOND;
                r = t - w;
                w = n * SECOND_REST - ((t - r) - w);
                head = r - w;
                if (lost(size, head) > 49) {
                    t = r;
                    w = n * THIRD;
                    r = t - w;
                    w = n * THIRD_REST - ((t - r) - w);
                    head = r - w;
                }
            }
        }
        return new Quadrant(n, head, (r - head) - w);
    }

    /** Bits that cancelled out. */
    private static int lost(int size, double head) {
        return (size >> 20) - (Words.size(head) >> 20);
    }
}
