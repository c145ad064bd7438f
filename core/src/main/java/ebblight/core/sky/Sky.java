package ebblight.core.sky;

/** Sun and moon over one place, parallax included; at seconds of UTC since 1970. */
public final class Sky {

    /** Radius of the sun in kilometres (IAU 2015 nominal). */
    public static final double SUN_KILOMETRES = 695_700;

    /** Radius of the moon in kilometres. */
    public static final double MOON_KILOMETRES = 1737.4;

    private static final double EARTH_KILOMETRES = 6378.14;
    private static final double POLAR_OVER_EQUATORIAL = 0.99664719;

    private final Place place;
    private final Ephemeris ephemeris;
    private final double sinLatitude;
    private final double cosLatitude;
    private final double outward;
    private final double northward;

    public Sky(Place place, Ephemeris ephemeris) {
        this.place = place;
        this.ephemeris = ephemeris;
        sinLatitude = Angles.sin(place.latitudeDegrees());
        cosLatitude = Angles.cos(place.latitudeDegrees());
        // the place against the earth's middle, outward from the axis and along it: NREL/TP-560-34302, section 3.12
        double reduced = StrictMath.atan2(POLAR_OVER_EQUATORIAL * sinLatitude, cosLatitude);
        double elevation = place.elevationMetres() / 1000;
        outward = EARTH_KILOMETRES * StrictMath.cos(reduced) + elevation * cosLatitude;
        northward = EARTH_KILOMETRES * POLAR_OVER_EQUATORIAL * StrictMath.sin(reduced) + elevation * sinLatitude;
    }

    /** The place. */
    public Place place() {
        return place;
    }

    /** Where the positions come from. */
    public Ephemeris ephemeris() {
        return ephemeris;
    }

    /** The sun. */
    public Horizontal sun(double epochSeconds) {
        return over(ephemeris.sun(epochSeconds), ephemeris.siderealDegrees(epochSeconds));
    }

    /** The moon. */
    public Horizontal moon(double epochSeconds) {
        return over(ephemeris.moon(epochSeconds), ephemeris.siderealDegrees(epochSeconds));
    }

    /** Sine of the sun's hour angle: zero, rising, as it passes the meridian at its highest. */
    double sunHourAngleSine(double epochSeconds) {
        Geocentric sun = ephemeris.sun(epochSeconds);
        return Angles.sin(
                ephemeris.siderealDegrees(epochSeconds) + place.longitudeDegrees() - sun.rightAscensionDegrees());
    }

    /** A body over the place while the earth has turned by {@code siderealDegrees} of apparent Greenwich time. */
    public Horizontal over(Geocentric body, double siderealDegrees) {
        double local = siderealDegrees + place.longitudeDegrees();
        double sin = Angles.sin(local);
        double cos = Angles.cos(local);
        double meridian = body.x() * cos + body.y() * sin - outward;
        double west = body.x() * sin - body.y() * cos;
        double pole = body.z() - northward;
        double up = meridian * cosLatitude + pole * sinLatitude;
        double north = pole * cosLatitude - meridian * sinLatitude;
        double level = Math.sqrt(north * north + west * west);
        return new Horizontal(
                Angles.wrap360(Angles.atan2(-west, north)),
                Angles.atan2(up, level),
                Math.sqrt(level * level + up * up));
    }

    /** Half the angle across a body of this radius at this distance, in degrees. */
    public static double semidiameterDegrees(double radiusKilometres, double kilometres) {
        return Angles.asin(radiusKilometres / kilometres);
    }
}
