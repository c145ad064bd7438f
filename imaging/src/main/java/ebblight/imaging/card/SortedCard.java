package ebblight.imaging.card;

import ebblight.core.card.Measured;
import ebblight.core.card.Role;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.Skipped;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A card in groups by view, each frame with its place in its group and the reasons.
 *
 * @param groups in order of their first frame
 * @param dust spots that stay at one place of the sensor
 * @param skipped files that are left out, each with the reason
 */
public record SortedCard(List<Group> groups, List<DustSpot> dust, List<Skipped> skipped) {

    /** What a group is of. */
    public enum Kind {
        /** One view of a scene. */
        VIEW,
        /** Frames without light. */
        DARKS,
        /** A code that was photographed. */
        SLATE
    }

    /**
     * Frames that belong together.
     *
     * @param frames in order of time
     * @param pairs each filtered frame with the clear one next to it in time
     */
    public record Group(Kind kind, List<Frame> frames, List<Pair> pairs) {}

    /**
     * One frame in its group.
     *
     * @param companions other files of the same shot
     * @param rank 1 = the best of the group
     * @param nearBest whether it is the best or comes near it
     * @param filterStops of the filter on it, by arithmetic; not a number when unknown
     * @param burst number of the burst it belongs to within the group, from 1; 0 for none
     * @param measured empty for darks and slates
     * @param hotPixels pixels that fill by themselves
     * @param clippedFraction share of the pixels at their end
     * @param notes why it stands where it does
     * @param slateText what a code in it says; empty for none
     */
    public record Frame(
            Path file,
            List<Path> companions,
            FrameFacts facts,
            int rank,
            boolean nearBest,
            Role role,
            double filterStops,
            int burst,
            Optional<Measured> measured,
            int hotPixels,
            double clippedFraction,
            List<String> notes,
            String slateText) {}

    /**
     * The same view without and with a filter.
     *
     * @param filterStops by arithmetic of exposure, to about a third of a stop
     */
    public record Pair(Path without, Path with, double filterStops) {}

    /**
     * Dust before the sensor.
     *
     * @param x fraction of the width from the left of the sensor
     * @param y fraction of its height from the top
     * @param radius fraction of the width
     * @param stops light that it takes at its middle
     * @param views in how many views it is seen
     */
    public record DustSpot(double x, double y, double radius, double stops, int views) {}
}
