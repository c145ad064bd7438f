package ebblight.core.sky;

/** Where sun and moon stand against the stars, and how far the earth has turned; at seconds of UTC since 1970. */
public interface Ephemeris {

    /** Geocentric apparent sun. */
    Geocentric sun(double epochSeconds);

    /** Geocentric apparent moon. */
    Geocentric moon(double epochSeconds);

    /** Apparent sidereal time at Greenwich, 0 to 360 degrees. */
    double siderealDegrees(double epochSeconds);

    /** Sun and moon by full theory at every call. */
    static Ephemeris computed() {
        return new ComputedEphemeris();
    }
}
