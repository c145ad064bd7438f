package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Frames of one view, from a clip or from single pictures, read as often as wanted and never held all at once. */
public interface FrameSource {

    /** The files that the frames come from, in order. */
    List<Path> files();

    /** About how many frames there are, repeats included: an upper bound. */
    int mostFrames();

    /** Facts of the first readable frame. */
    FrameFacts facts();

    /** What was left out so far and why; complete after the frames were visited. */
    List<Skipped> skipped();

    /** What is to be said of how the frames were read. */
    List<String> warnings();

    /** Whether the frames come from single pictures rather than from a clip. */
    boolean pictures();

    /**
     * Visits all frames in order of time, frames that repeat the one before byte for byte left out.
     *
     * @throws UnreadableInputException when not one frame can be read
     */
    void visit(FrameVisitor visitor, Work work) throws IOException;
}
