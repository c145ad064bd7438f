package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * Makes one picture from many frames in linear light of the first frame's primaries. The memory does not grow with the
 * number of frames, and the result is the same bits for any number of threads: light is summed in whole numbers.
 */
public final class Stacker {

    private Stacker() {}

    /** Stacks all frames of {@code source}. */
    public static StackResult stack(FrameSource source, StackOptions options, Work work) throws IOException {
        Optional<Darks> darks = options.darks().isPresent()
                ? Optional.of(Darks.read(options.darks().get(), work))
                : Optional.empty();
        try (StackPass pass = new StackPass(source, options, work)) {
            try {
                source.visit(pass, work);
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
            return pass.result(darks);
        }
    }
}
