package ebblight.core.light;

import ebblight.core.numeric.Powers;

/**
 * Illuminance of level ground from sun and sky under a clear sky, in lux, by the sun's apparent altitude. Two fits that
 * were made apart from each other: they agree within 0.08 stop down to −6°, 0.11 to −12°, 0.5 to −18°.
 */
public final class Daylight {

    /** Below this altitude in degrees neither fit holds; the night sky rules. */
    public static final double LOWEST_DEGREES = -18;

    private static final double[] FROM_DEGREES = {20, 5, -0.8, -5, -12, -18};

    /** Powers of h/90 for the logarithm of lux: USNO Circular 171; Vallado, table 5-1. */
    private static final double[][] PIECES = {
        {3.74, 3.97, -4.07, 1.47},
        {3.05, 13.28, -45.98, 64.33},
        {2.88, 22.26, -207.64, 1034.30},
        {2.88, 21.81, -258.11, -858.36},
        {2.70, 12.17, -431.69, -1899.83},
        {13.84, 262.72, 1447.42, 2797.93}
    };

    private static final double MIDDLE_DEGREES = 35;
    private static final double HALF_SPAN_DEGREES = 55;

    /** Chebyshev series for the logarithm of lux from −20° to 90°: USNO program of Janiczek, after Brown 1952. */
    private static final double[] SERIES = {
        0.2936506136978837e+01,
        0.3627326327566490e+01,
        -0.2233214447344062e+01,
        0.1015115465301055e+01,
        -0.1898083125016442e+00,
        -0.2620601965183225e+00,
        0.3829581829851666e+00,
        -0.2879683995474197e+00,
        0.1134487130232542e+00,
        0.3092492471913735e-01,
        -0.9853820413978147e-01,
        0.8976982948378892e-01,
        -0.4151839367722814e-01,
        -0.5982465090666525e-02,
        0.2913731978265127e-01,
        -0.2832367750489338e-01,
        0.1326901081959582e-01,
        0.3365892788214903e-02,
        -0.1123578761200569e-01,
        0.9862218049840636e-02,
        -0.3690281457418281e-02,
        -0.1338196406378107e-02,
        0.5060420921563732e-02,
        -0.3079727252974708e-02,
        0.2969002584378676e-02
    };

    /** Slope of the lowest piece at −18°, in powers of ten a degree. */
    private static final double LOWEST_SLOPE =
            (262.72 + 2 * 1447.42 * LOWEST_DEGREES / 90 + 3 * 2797.93 * (LOWEST_DEGREES / 90) * (LOWEST_DEGREES / 90))
                    / 90;

    private static final double LN_10 = StrictMath.log(10);

    private Daylight() {}

    /**
     * Lux by the fit in pieces, with steps of at most 0.014 stop where they join. Below −18° it goes on falling as it
     * does there; the night sky is brighter then.
     */
    public static double piecewiseLux(double apparentAltitudeDegrees) {
        for (int i = 0; i < FROM_DEGREES.length; i++) {
            if (apparentAltitudeDegrees >= FROM_DEGREES[i]) {
                return tenTo(cubic(PIECES[i], apparentAltitudeDegrees / 90));
            }
        }
        return tenTo(cubic(PIECES[PIECES.length - 1], LOWEST_DEGREES / 90)
                + LOWEST_SLOPE * (apparentAltitudeDegrees - LOWEST_DEGREES));
    }

    /** Lux by the series; 0 below −18°, where it is no longer used. */
    public static double seriesLux(double apparentAltitudeDegrees) {
        if (apparentAltitudeDegrees < LOWEST_DEGREES) {
            return 0;
        }
        double x = (apparentAltitudeDegrees - MIDDLE_DEGREES) / HALF_SPAN_DEGREES;
        double one = 0;
        double two = 0;
        for (int i = SERIES.length - 1; i > 0; i--) {
            double next = 2 * x * one - two + SERIES[i];
            two = one;
            one = next;
        }
        return tenTo(x * one - two + SERIES[0]);
    }

    /** How far the two fits lie apart, in stops, 0 or more; 0 below −18°. */
    public static double differenceStops(double apparentAltitudeDegrees) {
        if (apparentAltitudeDegrees < LOWEST_DEGREES) {
            return 0;
        }
        return Math.abs(Powers.log2(piecewiseLux(apparentAltitudeDegrees) / seriesLux(apparentAltitudeDegrees)));
    }

    static double cubic(double[] powers, double x) {
        return powers[0] + x * (powers[1] + x * (powers[2] + x * powers[3]));
    }

    static double tenTo(double exponent) {
        return StrictMath.exp(LN_10 * exponent);
    }
}
