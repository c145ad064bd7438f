package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Frames of a clip, decoded by FFmpeg one after the other. */
final class ClipFrames implements FrameSource {

    private final Path file;
    private final double framesPerSecond;
    private final List<String> warnings = new ArrayList<>();
    private final FrameFacts facts;
    private final int mostFrames;

    private ClipFrames(Path file, double framesPerSecond, FrameFacts facts, int mostFrames) {
        this.file = file;
        this.framesPerSecond = framesPerSecond;
        this.facts = facts;
        this.mostFrames = mostFrames;
    }

    /**
     * Opens a clip.
     *
     * @param framesPerSecond rate to use instead of the clip's own times; 0 for its own
     */
    static ClipFrames of(Path file, double framesPerSecond) throws IOException {
        ReadableFile.check(file);
        try (OpenClip clip = OpenClip.of(file)) {
            return new ClipFrames(file, framesPerSecond, FrameFacts.none(), clip.countPackets());
        }
    }

    @Override
    public List<Path> files() {
        return List.of(file);
    }

    @Override
    public int mostFrames() {
        return mostFrames;
    }

    @Override
    public FrameFacts facts() {
        return facts;
    }

    @Override
    public List<Skipped> skipped() {
        return List.of();
    }

    @Override
    public List<String> warnings() {
        return List.copyOf(warnings);
    }

    @Override
    public boolean pictures() {
        return false;
    }

    @Override
    public void visit(FrameVisitor visitor, Work work) throws IOException {
        warnings.clear();
        try (OpenClip clip = OpenClip.of(file);
                ClipPass pass = new ClipPass(clip, framesPerSecond, mostFrames, visitor, work)) {
            if (pass.run() == 0) {
                throw new UnreadableInputException(
                        file,
                        "is a clip of which not one frame can be decoded; copy it from the camera again, or convert it to H.264 or H.265");
            }
            VideoColours.warnings(clip.codec()).forEach(this::warn);
            pass.warnings().forEach(this::warn);
        }
    }

    private void warn(String warning) {
        warnings.add(file.getFileName() + ": " + warning);
    }
}
