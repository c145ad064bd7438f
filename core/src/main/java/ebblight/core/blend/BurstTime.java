package ebblight.core.blend;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Quantiles;
import java.util.Optional;

/**
 * Which shutter times a burst can give.
 *
 * @param spacingSeconds median time from one frame to the next
 * @param exposureSeconds how long a frame is exposed; 0 when unknown
 * @param seconds the time that the whole burst spans, the last frame's exposure included
 */
public record BurstTime(double spacingSeconds, double exposureSeconds, double seconds) {

    /** Times that differ by less than this, a twelfth of a stop, count as the same. */
    private static final double SAME = 1.06;
    /** A frame exposed more than half a stop longer than wished is not that time. */
    private static final double TOO_LONG = Math.sqrt(2);
    /** Fewer frames spaced far apart still show each on its own. */
    private static final int LEAST_FRAMES = 3;

    /**
     * From the instants of the frames.
     *
     * @param exposures of each frame in seconds, 0 where unknown
     */
    public static BurstTime of(double[] instants, double[] exposures) {
        int n = instants.length;
        double[] gaps = new double[Math.max(1, n - 1)];
        for (int i = 1; i < n; i++) {
            gaps[i - 1] = instants[i] - instants[i - 1];
        }
        double spacing = Quantiles.median(gaps, gaps.length);
        double exposure = Quantiles.median(exposures.clone(), n);
        double last = exposures[n - 1] > 0 ? exposures[n - 1] : spacing;
        return new BurstTime(spacing, exposure, instants[n - 1] - instants[0] + last);
    }

    /** Why a time cannot be had from these frames. */
    public enum Shortfall {
        /** It is longer than the burst from where it opens. */
        BURST_TOO_SHORT,
        /** It is shorter than what a single frame was exposed for. */
        FRAMES_TOO_LONG,
        /** So few frames fall into it, seconds apart and exposed for much less, that they are snapshots. */
        FRAMES_TOO_SPARSE
    }

    /** Whether the frames can give a time; empty when they can. */
    public Optional<Shortfall> shortfall(Taken.Time time) {
        if (time.seconds() > SAME * (seconds - time.fromSeconds())) {
            return Optional.of(Shortfall.BURST_TOO_SHORT);
        }
        if (exposureSeconds > TOO_LONG * time.seconds()) {
            return Optional.of(Shortfall.FRAMES_TOO_LONG);
        }
        boolean snapshots = Clip.spaced(spacingSeconds)
                && time.seconds() < LEAST_FRAMES * spacingSeconds
                && TOO_LONG * exposureSeconds < Math.min(time.seconds(), spacingSeconds);
        return snapshots ? Optional.of(Shortfall.FRAMES_TOO_SPARSE) : Optional.empty();
    }

    /** Frames at this rate that a time takes. */
    public int frames(double ofSeconds) {
        return (int) Math.max(1, Math.ceil(ofSeconds / spacingSeconds));
    }

    /** Frames that begin at this instant after the first or later no longer belong to the time; at least one does. */
    public double untilSeconds(Taken.Time time) {
        return time.fromSeconds() + Math.max(time.seconds() - spacingSeconds / 2, spacingSeconds / 4);
    }
}
