package ebblight.core.sky;

/**
 * How far the air lifts a body, at 1010 hPa and 10 °C. Saemundsson's formula (Meeus, Astronomical Algorithms, 16.4)
 * down to 1° under the horizon; below, where nothing is seen, it fades to nothing at −5°, so that there is no jump and
 * twilights keep their airless angles. Near the horizon true air differs from it by a tenth of a degree or more.
 */
public final class Refraction {

    private static final double LOWEST_DEGREES = -1;
    private static final double GONE_DEGREES = -5;

    private Refraction() {}

    /** Lift in degrees for a body at this airless altitude in degrees. */
    public static double liftDegrees(double airlessAltitudeDegrees) {
        if (airlessAltitudeDegrees <= GONE_DEGREES) {
            return 0;
        }
        if (airlessAltitudeDegrees < LOWEST_DEGREES) {
            return saemundsson(LOWEST_DEGREES)
                    * (airlessAltitudeDegrees - GONE_DEGREES)
                    / (LOWEST_DEGREES - GONE_DEGREES);
        }
        return saemundsson(airlessAltitudeDegrees);
    }

    /** Where the body is seen: airless altitude and lift, in degrees. */
    public static double apparentDegrees(double airlessAltitudeDegrees) {
        return airlessAltitudeDegrees + liftDegrees(airlessAltitudeDegrees);
    }

    private static double saemundsson(double altitude) {
        double minutes = 1.02 / StrictMath.tan(Angles.RADIAN * (altitude + 10.3 / (altitude + 5.11)));
        return Math.max(0, minutes) / 60;
    }
}
