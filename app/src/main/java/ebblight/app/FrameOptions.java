package ebblight.app;

import ebblight.app.ask.UsageException;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Inputs;
import ebblight.imaging.NoTimesException;
import ebblight.imaging.RawAs;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The frames a command works on: a clip, a folder of pictures, or pictures. */
final class FrameOptions {

    @Parameters(
            paramLabel = "INPUT",
            arity = "1..*",
            description = "A clip, a folder of pictures, or pictures (JPEG, PNG, TIFF, RAW).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private List<Path> inputs;

    @Option(
            names = "--fps",
            paramLabel = "RATE",
            description = "Frames per second, when the pictures do not say when they were taken; fractions such as"
                    + " 1/12 are understood.")
    private @Nullable String fps;

    List<Path> inputs() {
        return inputs;
    }

    /** Opens the frames, RAW by its embedded JPEG; their times must be known when {@code timesNeeded}. */
    FrameSource open(boolean timesNeeded) throws IOException {
        return open(timesNeeded, RawAs.EMBEDDED);
    }

    FrameSource open(boolean timesNeeded, RawAs rawAs) throws IOException {
        return open(inputs, fps, timesNeeded, rawAs);
    }

    /** Opens frames that another option names, at a rate that was typed or not. */
    static FrameSource open(List<Path> inputs, @Nullable String fps, boolean timesNeeded, RawAs rawAs)
            throws IOException {
        try {
            return Inputs.open(inputs, rate(fps), timesNeeded, rawAs);
        } catch (NoTimesException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private static double rate(@Nullable String typed) {
        if (typed == null) {
            return 0;
        }
        try {
            int slash = typed.indexOf('/');
            double rate = slash < 0
                    ? Double.parseDouble(typed)
                    : Double.parseDouble(typed.substring(0, slash)) / Double.parseDouble(typed.substring(slash + 1));
            if (rate > 0 && rate <= 10_000) {
                return rate;
            }
        } catch (NumberFormatException e) {
            // answered below with everything else that is no rate
        }
        throw new UsageException("--fps: \"" + typed + "\" is no rate; expected a number above 0 such as 25 or 1/12");
    }
}
