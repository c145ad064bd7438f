package ebblight.core.light;

import ebblight.core.numeric.Powers;
import ebblight.core.sky.Ephemeris;
import ebblight.core.sky.Geocentric;
import ebblight.core.sky.Horizontal;
import ebblight.core.sky.MoonPhase;
import ebblight.core.sky.Sky;

/**
 * Light on level ground at a place: sun, moon and night sky, divided by cloud, moved by what a meter said.
 *
 * @param sky sun and moon over the place
 * @param cloud cover of the sky over time
 * @param offsetStops by how much a meter found it brighter than the model; 0 when nobody metered
 * @param metered whether a meter was read
 */
public record LightModel(Sky sky, CloudCover cloud, double offsetStops, boolean metered) {

    /** Lux of the moonless night sky: stars and airglow (USNO Circular 171). */
    public static final double NIGHT_LUX = 5e-4;

    /** C of incident-light meters (ISO 2720): E = C/S · 2^EV. */
    private static final double INCIDENT_CONSTANT = 250;

    private static final double CLEAR_RANGE_STOPS = 1;
    private static final double METERED_RANGE_STOPS = 0.5;
    private static final double FULL_MOON_RANGE_STOPS = 0.7;

    /** The model for a cover, nothing metered. */
    public static LightModel of(Sky sky, CloudCover cloud) {
        return new LightModel(sky, cloud, 0, false);
    }

    public LightModel {
        if (!(Math.abs(offsetStops) <= 15)) {
            throw new IllegalArgumentException("a meter and the model differ by at most 15 stops, were " + offsetStops);
        }
    }

    /** This model moved so that it gives what a meter read at an instant, EV at ISO 100. */
    public LightModel withReading(double epochSeconds, double exposureValue100) {
        double unmoved = new LightModel(sky, cloud, 0, false).exposureValue100(epochSeconds);
        return new LightModel(sky, cloud, exposureValue100 - unmoved, true);
    }

    /** Illuminance in lux. */
    public double lux(double epochSeconds) {
        Ephemeris ephemeris = sky.ephemeris();
        double sidereal = ephemeris.siderealDegrees(epochSeconds);
        Geocentric sun = ephemeris.sun(epochSeconds);
        Geocentric moon = ephemeris.moon(epochSeconds);
        return lux(
                sky.over(sun, sidereal),
                sky.over(moon, sidereal),
                MoonPhase.separationDegrees(sun, moon),
                cloud.stops(epochSeconds));
    }

    private double lux(Horizontal sun, Horizontal moon, double separationDegrees, double cloudStops) {
        double through = Powers.exp2(-cloudStops);
        double day = Math.max(NIGHT_LUX, Daylight.piecewiseLux(sun.apparentAltitudeDegrees()) * through);
        double night = Moonlight.lux(moon.apparentAltitudeDegrees(), separationDegrees, moon.kilometres()) * through;
        return (day + night) * Powers.exp2(offsetStops);
    }

    /** Exposure value at ISO 100 of an incident-light reading, C = 250. */
    public double exposureValue100(double epochSeconds) {
        return exposureValue100OfLux(lux(epochSeconds));
    }

    /** Exposure value at ISO 100 of an illuminance in lux: log2(100 E / C). */
    public static double exposureValue100OfLux(double lux) {
        return Powers.log2(100 * lux / INCIDENT_CONSTANT);
    }

    /** How fast it grows darker, in stops a minute; negative when it grows brighter. Over two minutes about the instant. */
    public double fadingStopsPerMinute(double epochSeconds) {
        return 0.5 * (exposureValue100(epochSeconds - 60) - exposureValue100(epochSeconds + 60));
    }

    /**
     * Likely range of the exposure value, in stops either way: 1 under a clear sky, more under cloud, with what the two
     * fits differ by; half a stop once a meter was read.
     */
    public double rangeStops(double epochSeconds) {
        double altitude = sky.sun(epochSeconds).apparentAltitudeDegrees();
        double fits = Daylight.differenceStops(altitude);
        if (metered) {
            return METERED_RANGE_STOPS + fits;
        }
        double moon = altitude < -12 ? FULL_MOON_RANGE_STOPS : 0;
        return Math.max(CLEAR_RANGE_STOPS, moon) + fits + 0.5 * cloud.stops(epochSeconds);
    }
}
