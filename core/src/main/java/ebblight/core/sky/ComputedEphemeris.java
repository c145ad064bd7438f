package ebblight.core.sky;

/** Sun and moon by full theory at every call: some ten microseconds each. */
final class ComputedEphemeris implements Ephemeris {

    @Override
    public Geocentric sun(double epochSeconds) {
        double t = terrestrialCenturies(epochSeconds);
        return SunTheory.at(t, Nutation.at(t));
    }

    @Override
    public Geocentric moon(double epochSeconds) {
        double t = terrestrialCenturies(epochSeconds);
        return MoonTheory.at(t, Nutation.at(t));
    }

    @Override
    public double siderealDegrees(double epochSeconds) {
        return Nutation.at(terrestrialCenturies(epochSeconds)).siderealDegrees(Clock.julianDay(epochSeconds));
    }

    private static double terrestrialCenturies(double epochSeconds) {
        double julianDay = Clock.julianDay(epochSeconds);
        return Clock.centuries(julianDay + Clock.terrestrialMinusUniversal(julianDay) / Clock.DAY_SECONDS);
    }
}
