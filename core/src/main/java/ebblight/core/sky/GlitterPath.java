package ebblight.core.sky;

/**
 * The road of light that a low sun or moon lays on rippled water. Slopes of the water after Cox and Munk 1954: mean
 * square slope 0.003 + 0.00512 W (from memory); each facet a mirror. Edges are where it is half as bright as in the
 * middle. For open water; a sheltered pool has a narrower road.
 *
 * @param azimuthDegrees it runs towards
 * @param widthDegrees across it, where a level mirror would show the body
 * @param nearDegrees how far under the horizon its near end lies
 * @param farDegrees how far under the horizon its far end lies; 0 when it runs to the horizon
 */
public record GlitterPath(double azimuthDegrees, double widthDegrees, double nearDegrees, double farDegrees) {

    private static final double STILL_SLOPE = 0.003;
    private static final double SLOPE_PER_WIND = 0.00512;
    private static final double LN_2 = StrictMath.log(2);

    /**
     * The path of a body at an altitude above 0 and below 90 degrees, as it is seen.
     *
     * @param windMetresPerSecond over the water, 0 to 20
     */
    public static GlitterPath of(double azimuth, double altitude, double windMetresPerSecond) {
        if (!(altitude > 0 && altitude < 90)) {
            throw new IllegalArgumentException("a glitter path needs a body between 0 and 90 degrees, was " + altitude);
        }
        if (!(windMetresPerSecond >= 0 && windMetresPerSecond <= 20)) {
            throw new IllegalArgumentException(
                    "the slopes of water are known for wind of 0 to 20 m/s, was " + windMetresPerSecond);
        }
        double slope = Math.sqrt(LN_2 * (STILL_SLOPE + SLOPE_PER_WIND * windMetresPerSecond));
        double sineOfQuarter = Math.min(1, StrictMath.tan(Angles.RADIAN * altitude) * slope);
        double along = 2 * Angles.atan2(slope, 1);
        return new GlitterPath(
                azimuth,
                Math.min(360, 4 * Angles.asin(sineOfQuarter)),
                Math.min(90, altitude + along),
                Math.max(0, altitude - along));
    }
}
