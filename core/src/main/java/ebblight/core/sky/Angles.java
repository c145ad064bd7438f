package ebblight.core.sky;

/** Trigonometry in degrees. */
final class Angles {

    static final double RADIAN = Math.PI / 180;

    private Angles() {}

    static double sin(double degrees) {
        return StrictMath.sin(degrees * RADIAN);
    }

    static double cos(double degrees) {
        return StrictMath.cos(degrees * RADIAN);
    }

    static double asin(double value) {
        return StrictMath.asin(Math.max(-1, Math.min(1, value))) / RADIAN;
    }

    static double atan2(double y, double x) {
        return StrictMath.atan2(y, x) / RADIAN;
    }

    /** The same angle between 0 (included) and 360 (excluded). */
    static double wrap360(double degrees) {
        double wrapped = degrees - 360 * Math.floor(degrees / 360);
        return wrapped >= 360 ? 0 : wrapped;
    }

    /** The same angle between −180 (included) and 180 (excluded). */
    static double wrap180(double degrees) {
        return wrap360(degrees + 180) - 180;
    }
}
