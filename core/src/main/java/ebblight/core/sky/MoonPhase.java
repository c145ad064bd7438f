package ebblight.core.sky;

import ebblight.core.numeric.Rounding;

/**
 * How the moon is lit.
 *
 * @param elongationDegrees of the moon east of the sun along the ecliptic: 0 new, 90 first quarter, 180 full, 270 last
 * @param separationDegrees between moon and sun in the sky, 0 to 180
 * @param fraction of its disc that is lit, 0 to 1
 */
public record MoonPhase(double elongationDegrees, double separationDegrees, double fraction) {

    private static final double OBLIQUITY_DEGREES = 23.4367;
    private static final String[] NAMES = {
        "new moon",
        "waxing crescent",
        "first quarter",
        "waxing gibbous",
        "full moon",
        "waning gibbous",
        "last quarter",
        "waning crescent"
    };

    /** The phase at seconds of UTC since 1970, seen from the middle of the earth. */
    public static MoonPhase at(Ephemeris ephemeris, double epochSeconds) {
        return of(ephemeris.sun(epochSeconds), ephemeris.moon(epochSeconds));
    }

    static MoonPhase of(Geocentric sun, Geocentric moon) {
        double elongation = Angles.wrap360(
                moon.eclipticLongitudeDegrees(OBLIQUITY_DEGREES) - sun.eclipticLongitudeDegrees(OBLIQUITY_DEGREES));
        double toSun = sun.kilometres();
        double toMoon = moon.kilometres();
        double separation = separationDegrees(sun, moon);
        double sin = Angles.sin(separation);
        double cos = Angles.cos(separation);
        double atMoon = StrictMath.atan2(toSun * sin, toMoon - toSun * cos);
        return new MoonPhase(elongation, separation, (1 + StrictMath.cos(atMoon)) / 2);
    }

    /** Angle between moon and sun from the middle of the earth, 0 to 180 degrees. */
    public static double separationDegrees(Geocentric sun, Geocentric moon) {
        double dot = sun.x() * moon.x() + sun.y() * moon.y() + sun.z() * moon.z();
        double cos = Math.max(-1, Math.min(1, dot / (sun.kilometres() * moon.kilometres())));
        return Angles.atan2(Math.sqrt(1 - cos * cos), cos);
    }

    /** The name of the phase; new, quarters and full within 6° (half a day). */
    public String words() {
        int quarter = (int) Rounding.up(elongationDegrees / 90);
        if (Math.abs(elongationDegrees - 90 * quarter) <= 6) {
            return NAMES[2 * quarter % NAMES.length];
        }
        return NAMES[2 * (int) (elongationDegrees / 90) + 1];
    }
}
