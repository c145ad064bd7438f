package ebblight.core.light;

/**
 * Illuminance of level ground from the moon under a clear sky, in lux. Within 0.7 stop at full moon, whose surge the
 * fit smooths, 0.3 elsewhere.
 */
public final class Moonlight {

    private static final double[] FROM_DEGREES = {20, 5, -0.8};

    /** Powers of h/90 for the logarithm of the full moon's lux: USNO Circular 171. */
    private static final double[][] PIECES = {
        {-1.95, 4.06, -4.24, 1.56},
        {-2.58, 12.58, -42.58, 59.06},
        {-2.79, 24.27, -252.95, 1321.29}
    };

    private static final double LOWEST_FITTED_DEGREES = -0.8;
    private static final double MEAN_PARALLAX_DEGREES = 0.951;
    private static final double EARTH_KILOMETRES = 6378.14;

    private Moonlight() {}

    /**
     * Lux from the moon.
     *
     * @param apparentAltitudeDegrees of the moon
     * @param separationDegrees between moon and sun: 180 full, 0 new
     * @param kilometres to the moon
     */
    public static double lux(double apparentAltitudeDegrees, double separationDegrees, double kilometres) {
        if (apparentAltitudeDegrees < Daylight.LOWEST_DEGREES) {
            return 0;
        }
        double phase = 180 - separationDegrees;
        double square = phase * phase;
        double parallax = StrictMath.asin(EARTH_KILOMETRES / kilometres) * 180 / Math.PI / MEAN_PARALLAX_DEGREES;
        return full(apparentAltitudeDegrees)
                * Daylight.tenTo(-0.00868 * phase - 2.2e-9 * square * square)
                * parallax
                * parallax;
    }

    /** Below the range of the fit the moon's twilight falls as the sun's does. */
    private static double full(double altitude) {
        for (int i = 0; i < FROM_DEGREES.length; i++) {
            if (altitude >= FROM_DEGREES[i]) {
                return Daylight.tenTo(Daylight.cubic(PIECES[i], altitude / 90));
            }
        }
        return Daylight.tenTo(Daylight.cubic(PIECES[PIECES.length - 1], LOWEST_FITTED_DEGREES / 90))
                * Daylight.piecewiseLux(altitude)
                / Daylight.piecewiseLux(LOWEST_FITTED_DEGREES);
    }
}
