package ebblight.demo;

import java.util.List;

/**
 * The wind and the swell that raise the sea.
 *
 * @param name for people and files, lower case
 * @param windMetresPerSecond at 10 m height, 0.5 to 25
 * @param fetchMetres the stretch of water over which the wind blows, 100 to 1e6
 * @param windDegrees where the wind sea runs to, counter-clockwise from the picture's right; 90 is away from the camera
 * @param swellHeightMetres significant height of the swell, 0 for none
 * @param swellPeriodSeconds its peak period, 4 to 12
 * @param swellDegrees where it runs to, as the wind
 * @param gusts relative standard deviation of the slopes' size under gusts, 0 to 0.5
 * @param seed of the waves
 */
public record Weather(
        String name,
        double windMetresPerSecond,
        double fetchMetres,
        double windDegrees,
        double swellHeightMetres,
        double swellPeriodSeconds,
        double swellDegrees,
        double gusts,
        long seed) {

    /** The evening of the demo outing. */
    public static final Weather EVENING = new Weather("evening", 3.6, 5e3, -118, 0.06, 5.5, -82, 0.08, 20);

    /** Light air on sheltered water. */
    public static final Weather BREEZE = new Weather("breeze-1.5", 1.5, 2e3, -149, 0, 8, 0, 0, 78);

    /** A light wind over a bay. */
    public static final Weather LIGHT = new Weather("wind-3", 3, 1e4, -115, 0, 8, 0, 0, 1);

    /** A fresh wind: chop. */
    public static final Weather FRESH = new Weather("wind-8", 8, 5e4, -115, 0, 8, 0, 0, 2);

    /** A moderate wind and a long swell from far away. */
    public static final Weather SWELL = new Weather("wind-5-swell-10", 5, 2e4, -40, 0.3, 10, -69, 0, 77);

    /** A short swell under a light wind. */
    public static final Weather ROLLING = new Weather("wind-3-swell-8", 3, 1e4, -115, 0.5, 8, -97, 0, 3);

    /** A short swell under light air. */
    public static final Weather CALM_SWELL = new Weather("swell-8", 1, 1e3, -115, 0.5, 8, -97, 0, 5);

    /** A light wind that comes in gusts. */
    public static final Weather GUSTY = new Weather("gusts-3", 3, 1e4, -115, 0, 8, 0, 0.35, 4);

    /** All of the above, the demo's evening first. */
    public static final List<Weather> ALL = List.of(EVENING, BREEZE, LIGHT, FRESH, SWELL, ROLLING, CALM_SWELL, GUSTY);

    /** The same weather with other waves. */
    public Weather withSeed(long newSeed) {
        return new Weather(
                name,
                windMetresPerSecond,
                fetchMetres,
                windDegrees,
                swellHeightMetres,
                swellPeriodSeconds,
                swellDegrees,
                gusts,
                newSeed);
    }

    public Weather {
        inside("windMetresPerSecond", windMetresPerSecond, 0.5, 25);
        inside("fetchMetres", fetchMetres, 100, 1e6);
        inside("swellHeightMetres", swellHeightMetres, 0, 2);
        inside("swellPeriodSeconds", swellPeriodSeconds, 4, 12);
        inside("gusts", gusts, 0, 0.5);
    }

    private static void inside(String name, double value, double from, double to) {
        if (!(value >= from && value <= to)) {
            throw new IllegalArgumentException(name + " must be " + from + " to " + to + ", was " + value);
        }
    }
}
