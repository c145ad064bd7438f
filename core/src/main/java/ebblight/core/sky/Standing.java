package ebblight.core.sky;

/** How a body stands to the picture. */
public enum Standing {
    /** Part of its disc is in the picture. */
    INSIDE("inside"),
    /** Outside, but near enough that its light strikes the lens and may flare. */
    FLARE("flare"),
    /** Before the lens, far to the side or above. */
    SIDE("side"),
    /** Behind the lens. */
    BEHIND("behind"),
    /** Under the horizon or the skyline. */
    DOWN("down");

    /** Within this angle of the picture's edge light strikes the lens; common practice, less with a hood. */
    public static final double FLARE_DEGREES = 20;

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    /** One lower-case word. */
    public String word() {
        return word;
    }

    /**
     * How a disc stands to a view.
     *
     * @param azimuth and altitude of its middle as it is seen, in degrees
     * @param semidiameter half the angle across it
     * @param skylineDegrees altitude of the skyline there; 0 for a level horizon
     */
    public static Standing of(
            CameraView view, double azimuth, double altitude, double semidiameter, double skylineDegrees) {
        if (altitude + semidiameter <= skylineDegrees) {
            return DOWN;
        }
        if (view.offAxisDegrees(azimuth, altitude) >= 90) {
            return BEHIND;
        }
        double outside = view.outsideDegrees(azimuth, altitude);
        if (outside <= semidiameter) {
            return INSIDE;
        }
        return outside <= FLARE_DEGREES ? FLARE : SIDE;
    }
}
