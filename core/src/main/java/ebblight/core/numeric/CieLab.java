package ebblight.core.numeric;

/**
 * A colour in CIE 1976 L*a*b* against D50 (ISO 11664-4, from memory).
 *
 * @param lightness L*, 0 black to 100 white
 * @param a green below 0, red above
 * @param b blue below 0, yellow above
 */
public record CieLab(double lightness, double a, double b) {

    private static final double EDGE = 216.0 / 24_389;
    private static final double SLOPE = 24_389.0 / 27;
    /** White of D50 as ICC profiles have it (ICC.1, from memory). */
    private static final double WHITE_X = 0.9642;

    private static final double WHITE_Z = 0.8249;

    /** The colour of linear sRGB light; its white D65 is taken over to D50 (Bradford, as in sRGB profiles). */
    public static CieLab ofLinearSrgb(double red, double green, double blue) {
        double x = 0.4360747 * red + 0.3850649 * green + 0.1430804 * blue;
        double y = 0.2225045 * red + 0.7168786 * green + 0.0606169 * blue;
        double z = 0.0139322 * red + 0.0971045 * green + 0.7141733 * blue;
        double fx = root(x / WHITE_X);
        double fy = root(y);
        double fz = root(z / WHITE_Z);
        return new CieLab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    private static double root(double share) {
        return share > EDGE ? Powers.pow(share, 1.0 / 3) : (SLOPE * share + 16) / 116;
    }
}
