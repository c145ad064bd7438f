package ebblight.core.numeric;

import java.time.Instant;

/** Instants as numbers: seconds of UTC since 1970, as kernels take them. */
public final class Epoch {

    private Epoch() {}

    /** Seconds of UTC since 1970-01-01T00:00Z. */
    public static double seconds(Instant instant) {
        return instant.getEpochSecond() + 1e-9 * instant.getNano();
    }

    /** The instant, to the nearest millisecond. */
    public static Instant instant(double epochSeconds) {
        return Instant.ofEpochMilli(Rounding.up(1000 * epochSeconds));
    }
}
