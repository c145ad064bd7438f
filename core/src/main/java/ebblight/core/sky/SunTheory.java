package ebblight.core.sky;

/**
 * The sun as the earth sees it, light time and aberration included. Source: NREL/TP-560-34302, sections 3.2 to 3.10;
 * its uncertainty is stated there as 0.0003° for the years −2000 to 6000.
 */
final class SunTheory {

    private static final double SCALE = 1e-8;
    private static final double ABERRATION_DEGREES = 20.4898 / 3600;
    private static final double KILOMETRES_PER_AU = 149_597_870.7;

    private SunTheory() {}

    /** Geocentric apparent sun at {@code t} Julian centuries of terrestrial time since 2000. */
    static Geocentric at(double t, Nutation nutation) {
        double millennia = t / 10;
        double longitude = SCALE * sum(EarthTerms.LONGITUDE, millennia) / Angles.RADIAN + 180;
        double latitude = -SCALE * sum(EarthTerms.LATITUDE, millennia) / Angles.RADIAN;
        double radius = SCALE * sum(EarthTerms.RADIUS, millennia);
        double apparent = longitude + nutation.longitudeDegrees() - ABERRATION_DEGREES / radius;
        return Geocentric.ofEcliptic(apparent, latitude, nutation.obliquityDegrees(), KILOMETRES_PER_AU * radius);
    }

    private static double sum(double[][] series, double millennia) {
        double sum = 0;
        for (int power = series.length - 1; power >= 0; power--) {
            double[] terms = series[power];
            double level = 0;
            for (int i = 0; i < terms.length; i += 3) {
                level += terms[i] * StrictMath.cos(terms[i + 1] + terms[i + 2] * millennia);
            }
            sum = sum * millennia + level;
        }
        return sum;
    }
}
