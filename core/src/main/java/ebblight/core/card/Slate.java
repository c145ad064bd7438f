package ebblight.core.card;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;

/**
 * What a photographed code says of the frames after it.
 *
 * @param time when it was shown
 * @param offset of the clock on the wall there
 * @param view name of the view; empty when not said
 * @param filters on the lens from now on, as {@code Filter.parse} reads them; empty for none
 * @param wish what the frames shall become, as in {@code water=silky}; empty when not said
 */
public record Slate(Instant time, ZoneOffset offset, String view, List<String> filters, List<String> wish) {

    public Slate {
        filters = List.copyOf(filters);
        wish = List.copyOf(wish);
    }

    /**
     * Seconds by which a camera's clock is ahead of the clock on the wall.
     *
     * @param cameraSeconds when the camera says it photographed the slate: its wall clock read as if it were UTC
     */
    public double cameraAheadSeconds(double cameraSeconds) {
        return cameraSeconds - wallSeconds();
    }

    private double wallSeconds() {
        return time.getEpochSecond() + time.getNano() * 1e-9 + offset.getTotalSeconds();
    }

    /** The true instant of a frame of the same card, in seconds from 1970 on. */
    public double trueSeconds(double cameraSeconds, double slateCameraSeconds) {
        return cameraSeconds - cameraAheadSeconds(slateCameraSeconds) - offset.getTotalSeconds();
    }
}
