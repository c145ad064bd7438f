package ebblight.core.sky;

/**
 * How the earth's axis nods and how its equator lies against its path, in degrees. Source: NREL/TP-560-34302, section
 * 3.4 and 3.5.
 *
 * @param longitudeDegrees nutation in longitude
 * @param obliquityDegrees true obliquity of the ecliptic
 */
record Nutation(double longitudeDegrees, double obliquityDegrees) {

    private static final double UNITS_PER_DEGREE = 36_000_000;

    /** Mean obliquity in seconds of arc, powers of ten thousand years. */
    private static final double[] MEAN_OBLIQUITY = {
        84_381.448, -4680.93, -1.55, 1999.25, 51.38, -249.67, -39.05, 7.12, 27.87, 5.79, 2.45
    };

    /** Nutation at {@code t} Julian centuries of terrestrial time since 2000. */
    static Nutation at(double t) {
        double elongation = 297.85036 + t * (445_267.111480 + t * (-0.0019142 + t / 189_474));
        double sun = 357.52772 + t * (35_999.050340 + t * (-0.0001603 - t / 300_000));
        double moon = 134.96298 + t * (477_198.867398 + t * (0.0086972 + t / 56_250));
        double latitude = 93.27191 + t * (483_202.017538 + t * (-0.0036825 + t / 327_270));
        double node = 125.04452 + t * (-1934.136261 + t * (0.0020708 + t / 450_000));
        double[] rows = NutationTerms.ROWS;
        double inLongitude = 0;
        double inObliquity = 0;
        for (int i = 0; i < rows.length; i += NutationTerms.WIDTH) {
            double argument = Angles.RADIAN
                    * (rows[i] * elongation
                            + rows[i + 1] * sun
                            + rows[i + 2] * moon
                            + rows[i + 3] * latitude
                            + rows[i + 4] * node);
            inLongitude += (rows[i + 5] + rows[i + 6] * t) * StrictMath.sin(argument);
            inObliquity += (rows[i + 7] + rows[i + 8] * t) * StrictMath.cos(argument);
        }
        return new Nutation(inLongitude / UNITS_PER_DEGREE, meanObliquity(t) + inObliquity / UNITS_PER_DEGREE);
    }

    private static double meanObliquity(double t) {
        double u = t / 100;
        double seconds = 0;
        for (int k = MEAN_OBLIQUITY.length - 1; k >= 0; k--) {
            seconds = seconds * u + MEAN_OBLIQUITY[k];
        }
        return seconds / 3600;
    }

    /** Apparent sidereal time at Greenwich in degrees; NREL/TP-560-34302, section 3.8. */
    double siderealDegrees(double julianDay) {
        double t = Clock.centuries(julianDay);
        double mean = 280.46061837 + 360.98564736629 * (julianDay - 2_451_545) + t * t * (0.000387933 - t / 38_710_000);
        return Angles.wrap360(mean + longitudeDegrees * Angles.cos(obliquityDegrees));
    }
}
