package ebblight.imaging.finish;

import ebblight.imaging.IccProfile;

/** Linear RGB of one profile to CIE L*a*b* under D50 and back (CIE 15; white of ICC.1:2010, 7.2.16). */
public final class Colours {

    private static final double WHITE_X = 0.9642;
    private static final double WHITE_Z = 0.8249;
    private static final double EDGE = 216.0 / 24389;
    private static final double SLOPE = 24389.0 / 27;

    private final double[] toXyz;
    private final double[] fromXyz;

    private Colours(double[] toXyz, double[] fromXyz) {
        this.toXyz = toXyz;
        this.fromXyz = fromXyz;
    }

    public static Colours of(IccProfile profile) {
        return new Colours(profile.toXyz(), profile.fromXyz());
    }

    /** Luminance Y, white = 1. */
    public double luminance(double red, double green, double blue) {
        return toXyz[3] * red + toXyz[4] * green + toXyz[5] * blue;
    }

    /** Writes L*, a*, b* of linear light into {@code lab}. */
    public void toLab(double red, double green, double blue, double[] lab) {
        double fx = cube((toXyz[0] * red + toXyz[1] * green + toXyz[2] * blue) / WHITE_X);
        double fy = cube(luminance(red, green, blue));
        double fz = cube((toXyz[6] * red + toXyz[7] * green + toXyz[8] * blue) / WHITE_Z);
        lab[0] = 116 * fy - 16;
        lab[1] = 500 * (fx - fy);
        lab[2] = 200 * (fy - fz);
    }

    /** Writes linear red, green, blue of L*, a*, b* into {@code rgb}; may lie outside 0 to 1. */
    public void toRgb(double lightness, double a, double b, double[] rgb) {
        double fy = (lightness + 16) / 116;
        double x = WHITE_X * uncube(fy + a / 500);
        double y = uncube(fy);
        double z = WHITE_Z * uncube(fy - b / 200);
        ofXyz(x, y, z, rgb);
    }

    /** Writes linear red, green, blue of XYZ under D50 into {@code rgb}; may lie outside 0 to 1. */
    public void ofXyz(double x, double y, double z, double[] rgb) {
        for (int c = 0; c < 3; c++) {
            rgb[c] = fromXyz[3 * c] * x + fromXyz[3 * c + 1] * y + fromXyz[3 * c + 2] * z;
        }
    }

    /** L* of a luminance of 0 or more. */
    public static double lightness(double luminance) {
        return 116 * cube(Math.max(0, luminance)) - 16;
    }

    /** Luminance of an L* of 0 or more. */
    public static double luminanceOf(double lightness) {
        return uncube((lightness + 16) / 116);
    }

    private static double cube(double t) {
        return t > EDGE ? StrictMath.cbrt(t) : (SLOPE * t + 16) / 116;
    }

    private static double uncube(double f) {
        double cubed = f * f * f;
        return cubed > EDGE ? cubed : (116 * f - 16) / SLOPE;
    }
}
