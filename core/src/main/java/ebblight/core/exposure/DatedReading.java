package ebblight.core.exposure;

/**
 * A meter reading and when it was taken. Light changes: the reading is carried forward to the moment the shutter opens
 * at a known rate, and grows stale without one.
 *
 * @param reading what the meter said, without filters
 * @param atSeconds when, in seconds of any clock that all readings share
 */
public record DatedReading(MeterReading reading, double atSeconds) {

    /** Below this exposure value the sun is near the horizon or gone (common practice: sunset is about EV 12). */
    private static final double DUSK_EXPOSURE_VALUE = 12;

    private static final double STALE_AT_DUSK_MINUTES = 5;
    private static final double STALE_BY_DAY_MINUTES = 30;

    /** Dials and displays show thirds of a stop: a reading is off by up to a sixth either way. */
    private static final double READING_STOPS = 1.0 / 6;

    private static final double SHORTEST_MINUTES = 0.5;

    public DatedReading {
        if (!Double.isFinite(atSeconds)) {
            throw new IllegalArgumentException("the instant of a reading must be finite, was " + atSeconds);
        }
    }

    /**
     * A rate of the light.
     *
     * @param stopsPerMinute positive when it grows darker
     * @param rangeStopsPerMinute how far off it may be, either way
     */
    public record Rate(double stopsPerMinute, double rangeStopsPerMinute) {}

    /**
     * How fast the light changed from this reading to a later one.
     *
     * @throws IllegalArgumentException when less than half a minute lies between them
     */
    public Rate rateTo(DatedReading later) {
        double minutes = (later.atSeconds - atSeconds) / 60;
        if (!(minutes >= SHORTEST_MINUTES)) {
            throw new IllegalArgumentException(
                    "two readings must lie half a minute apart or more to tell a rate, were " + minutes + " min");
        }
        double fallen = reading.exposureValue100() - later.reading.exposureValue100();
        return new Rate(fallen / minutes, Math.sqrt(2) * READING_STOPS / minutes);
    }

    /** Exposure value at ISO 100 at another instant, for a light that changes by {@code stopsPerMinute}. */
    public double exposureValueAt(double seconds, double stopsPerMinute) {
        return reading.exposureValue100() - stopsPerMinute * (seconds - atSeconds) / 60;
    }

    /** Minutes after which the reading must be taken again: 5 at dusk, 30 by day (common practice). */
    public double staleAfterMinutes() {
        return reading.exposureValue100() < DUSK_EXPOSURE_VALUE ? STALE_AT_DUSK_MINUTES : STALE_BY_DAY_MINUTES;
    }

    /** Whether the reading must be taken again at {@code seconds}. */
    public boolean staleAt(double seconds) {
        return seconds - atSeconds > 60 * staleAfterMinutes();
    }
}
