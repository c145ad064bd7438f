package ebblight.core.sky;

/**
 * Where a body appears from the middle of the earth: kilometres along the axes of the true equator and equinox of
 * date, x to the equinox, z to the north pole.
 */
public record Geocentric(double x, double y, double z) {

    /** From ecliptic longitude and latitude of date, in degrees. */
    static Geocentric ofEcliptic(double longitude, double latitude, double obliquity, double kilometres) {
        double alongX = Angles.cos(latitude) * Angles.cos(longitude);
        double alongY = Angles.cos(latitude) * Angles.sin(longitude);
        double alongZ = Angles.sin(latitude);
        double cos = Angles.cos(obliquity);
        double sin = Angles.sin(obliquity);
        return new Geocentric(
                kilometres * alongX,
                kilometres * (alongY * cos - alongZ * sin),
                kilometres * (alongY * sin + alongZ * cos));
    }

    /** Distance from the earth's middle in kilometres. */
    public double kilometres() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    /** Right ascension, 0 to 360 degrees. */
    public double rightAscensionDegrees() {
        return Angles.wrap360(Angles.atan2(y, x));
    }

    /** Declination, −90 to 90 degrees. */
    public double declinationDegrees() {
        return Angles.atan2(z, Math.sqrt(x * x + y * y));
    }

    /** Ecliptic longitude of date, 0 to 360 degrees. */
    double eclipticLongitudeDegrees(double obliquityDegrees) {
        double along = y * Angles.cos(obliquityDegrees) + z * Angles.sin(obliquityDegrees);
        return Angles.wrap360(Angles.atan2(along, x));
    }
}
