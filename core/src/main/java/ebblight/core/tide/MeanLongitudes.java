package ebblight.core.tide;

/**
 * Mean longitudes that drive the tide, in degrees. Source: Schureman, SP 98 (1940), page 162, Newcomb's and Brown's
 * values, T in Julian centuries of universal time since 1899-12-31 12:00.
 *
 * @param hourAngle T of Schureman: 15° an hour from midnight, plus 180°
 * @param moon s
 * @param sun h
 * @param perigee p of the moon
 * @param node N of the moon
 * @param perihelion p₁ of the sun
 */
record MeanLongitudes(double hourAngle, double moon, double sun, double perigee, double node, double perihelion) {

    static final double DAY_SECONDS = 86_400;
    private static final double EPOCH_JULIAN_DAY = 2_440_587.5;
    private static final double ORIGIN_JULIAN_DAY = 2_415_020;
    private static final double CENTURY_DAYS = 36_525;
    private static final double CENTURY_HOURS = 24 * CENTURY_DAYS;

    /** Degrees an hour of T, s, h, p and p₁. */
    static final double[] DEGREES_PER_HOUR = {
        15,
        481_267.89057 / CENTURY_HOURS,
        36_000.76892 / CENTURY_HOURS,
        4069.03403 / CENTURY_HOURS,
        1.71902 / CENTURY_HOURS
    };

    static MeanLongitudes at(double epochSeconds) {
        double t = (EPOCH_JULIAN_DAY + epochSeconds / DAY_SECONDS - ORIGIN_JULIAN_DAY) / CENTURY_DAYS;
        double ofDay = epochSeconds - DAY_SECONDS * Math.floor(epochSeconds / DAY_SECONDS);
        return new MeanLongitudes(
                15 * ofDay / 3600 + 180,
                wrap(270.43659 + t * (481_267.89057 + t * (0.00198 + 0.000002 * t))),
                wrap(279.69668 + t * (36_000.76892 + t * 0.00030)),
                wrap(334.32956 + t * (4069.03403 + t * (-0.01032 - 0.00001 * t))),
                wrap(259.18328 + t * (-1934.14201 + t * (0.00208 + 0.000002 * t))),
                wrap(281.22083 + t * (1.71902 + t * (0.00045 + 0.000003 * t))));
    }

    static double wrap(double degrees) {
        return degrees - 360 * Math.floor(degrees / 360);
    }
}
