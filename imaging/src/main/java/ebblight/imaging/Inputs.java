package ebblight.imaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What a person names on the command line, made into frames: a clip, a folder of pictures, or pictures. */
public final class Inputs {

    private Inputs() {}

    /** Opens the named inputs, RAW files by their embedded JPEG. */
    public static FrameSource open(List<Path> inputs, double framesPerSecond, boolean timesNeeded) throws IOException {
        return open(inputs, framesPerSecond, timesNeeded, RawAs.EMBEDDED);
    }

    /**
     * Opens the named inputs.
     *
     * @param framesPerSecond rate when the frames carry no times of their own; 0 when not given
     * @param timesNeeded whether pictures without times are of no use
     * @param rawAs what is taken of RAW files
     * @throws UnreadableInputException when nothing can be read
     * @throws NoTimesException when times are needed and neither the pictures nor a rate tell them
     */
    public static FrameSource open(List<Path> inputs, double framesPerSecond, boolean timesNeeded, RawAs rawAs)
            throws IOException {
        if (inputs.isEmpty()) {
            throw new UnreadableInputException("no input was named: give a clip, a folder or pictures");
        }
        List<Path> pictures = new ArrayList<>();
        for (Path input : inputs) {
            if (!Files.exists(input)) {
                throw new UnreadableInputException(input, "does not exist");
            }
            if (Files.isDirectory(input)) {
                pictures.addAll(picturesIn(input));
            } else if (PictureReader.reads(input)) {
                pictures.add(input);
            } else if (inputs.size() == 1) {
                return ClipFrames.of(input, framesPerSecond);
            } else {
                throw new UnreadableInputException(
                        input, "is no picture (JPEG, PNG, TIFF or RAW); a clip must be the only input");
            }
        }
        return PictureFrames.of(pictures, framesPerSecond, timesNeeded, rawAs);
    }

    /** Every file that the inputs name; of a folder the pictures in it. */
    public static List<Path> files(List<Path> inputs) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path input : inputs) {
            if (Files.isDirectory(input)) {
                files.addAll(picturesIn(input));
            } else {
                files.add(input);
            }
        }
        return files;
    }

    /** Whether the name of a file says that it is a picture which can be read as a frame. */
    public static boolean isPicture(Path file) {
        return PictureReader.reads(file);
    }

    private static List<Path> picturesIn(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            List<Path> found = list.filter(f -> Files.isRegularFile(f) && PictureReader.reads(f))
                    .sorted(Comparator.comparing(Path::toString))
                    .toList();
            if (found.isEmpty()) {
                throw new UnreadableInputException(folder, "holds no picture (JPEG, PNG, TIFF or RAW)");
            }
            return found;
        }
    }
}
