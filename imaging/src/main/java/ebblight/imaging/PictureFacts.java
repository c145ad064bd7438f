package ebblight.imaging;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a written picture says of itself.
 *
 * @param exposureSeconds total time that its light was gathered, when known
 * @param frames how many frames it was made from
 * @param sources the files they came from
 * @param description what it is, in one sentence
 */
public record PictureFacts(
        OptionalDouble exposureSeconds,
        OptionalDouble fNumber,
        OptionalDouble isoSpeed,
        OptionalDouble focalMillimetres,
        Optional<LocalDateTime> taken,
        int frames,
        List<Path> sources,
        String description) {

    static final String SOFTWARE = "Ebblight 0.1.0";

    /** The facts of a picture made from {@code frames} frames of a source with the given facts. */
    public static PictureFacts of(
            FrameFacts facts, OptionalDouble exposureSeconds, int frames, List<Path> sources, String description) {
        return new PictureFacts(
                exposureSeconds,
                facts.fNumber(),
                facts.isoSpeed(),
                facts.focalMillimetres(),
                facts.taken(),
                frames,
                List.copyOf(sources),
                description);
    }
}
