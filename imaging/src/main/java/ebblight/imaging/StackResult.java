package ebblight.imaging;

import ebblight.imaging.grain.Grain;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A stacked picture and what is to be said of it.
 *
 * @param frames frames that went into it
 * @param seconds time that they gathered light, when known
 * @param gaps times without exposure between frames, when known
 * @param grain noise of a mean, measured on how the frames differ
 * @param facts facts of the first frame
 */
public record StackResult(
        CodedPicture picture,
        int frames,
        List<Skipped> skipped,
        OptionalDouble seconds,
        Optional<Gaps> gaps,
        FrameFacts facts,
        Optional<Grain> grain,
        List<String> warnings) {

    /** Gaps between exposures: how many, how long together, and the longest, in seconds. */
    public record Gaps(int count, double seconds, double longestSeconds) {}
}
