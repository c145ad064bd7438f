package ebblight.imaging;

import ebblight.core.motion.Placement;
import java.util.List;

/**
 * Where the frames of a camera that moved are put back to.
 *
 * @param placements where survey frames lay; empty for a camera that stood still
 * @param sourceIndices which source frame each placement belongs to
 * @param surveyWidth width that the placements count in
 */
public record Placed(List<Placement> placements, int[] sourceIndices, int surveyWidth) {

    /** Frames that are where they belong. */
    public static Placed still() {
        return new Placed(List.of(), new int[0], 1);
    }

    /** Frame {@code index} of the source, put back in place. */
    DecodedFrame frame(DecodedFrame frame, int index) {
        if (placements.isEmpty()) {
            return frame;
        }
        return new ShiftedFrame(frame, RigidMove.of(at(index), surveyWidth, frame.width(), frame.height()));
    }

    /** The placement of a source frame, between the survey frames before and after it. */
    Placement at(int index) {
        int k = 0;
        while (k < sourceIndices.length - 1 && sourceIndices[k + 1] <= index) {
            k++;
        }
        if (k >= placements.size() - 1) {
            return placements.get(placements.size() - 1);
        }
        Placement a = placements.get(k);
        Placement b = placements.get(k + 1);
        double t =
                Math.max(0, (index - sourceIndices[k]) / (double) Math.max(1, sourceIndices[k + 1] - sourceIndices[k]));
        return new Placement(
                a.dx() + t * (b.dx() - a.dx()),
                a.dy() + t * (b.dy() - a.dy()),
                a.angle() + t * (b.angle() - a.angle()));
    }
}
