package ebblight.demo;

/** The sRGB curve to 8 bits (IEC 61966-2-1), by the levels at which one code gives way to the next. */
final class Srgb {

    private static final int CELLS = 4096;
    /** Lowest code of each cell of the linear scale, and the level from which each code is nearest. */
    private static final short[] FIRST = new short[CELLS + 1];

    private static final double[] FROM = new double[257];

    static {
        for (int code = 1; code < 256; code++) {
            FROM[code] = linear((code - 0.5) / 255);
        }
        FROM[256] = Double.POSITIVE_INFINITY;
        int code = 0;
        for (int i = 0; i <= CELLS; i++) {
            while (FROM[code + 1] <= (double) i / CELLS) {
                code++;
            }
            FIRST[i] = (short) code;
        }
    }

    private Srgb() {}

    private static double linear(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : StrictMath.exp(2.4 * StrictMath.log((encoded + 0.055) / 1.055));
    }

    /** Nearest code of a linear level; levels beyond 0 and 1 get 0 and 255. */
    static byte code(double level) {
        double l = Math.max(0, Math.min(1, level));
        int code = FIRST[(int) (l * CELLS)];
        while (FROM[code + 1] <= l) {
            code++;
        }
        return (byte) code;
    }
}
