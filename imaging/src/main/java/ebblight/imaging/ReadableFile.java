package ebblight.imaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads files; where that fails, says which file and why. */
final class ReadableFile {

    private ReadableFile() {}

    private interface Reading<T> {
        T read() throws IOException;
    }

    /** All bytes of a file. */
    static byte[] bytes(Path file) throws UnreadableInputException {
        return reading(file, () -> Files.readAllBytes(file));
    }

    /** What a picture says of itself, without reading its pixels. */
    static FrameFacts facts(Path file) throws UnreadableInputException {
        return reading(file, () -> ExifReader.read(file));
    }

    /** Fails when the file cannot be read at all. */
    static void check(Path file) throws UnreadableInputException {
        reading(file, () -> {
            try (InputStream in = Files.newInputStream(file)) {
                return in.read();
            }
        });
    }

    private static <T> T reading(Path file, Reading<T> reading) throws UnreadableInputException {
        try {
            if (Files.size(file) == 0) {
                throw new UnreadableInputException(file, "is empty");
            }
            return reading.read();
        } catch (NoSuchFileException e) {
            throw new UnreadableInputException(file, "does not exist");
        } catch (AccessDeniedException e) {
            throw new UnreadableInputException(file, "may not be read (permission denied)");
        } catch (UnreadableInputException e) {
            throw e;
        } catch (IOException | OutOfMemoryError e) {
            throw new UnreadableInputException(file, "could not be read: " + e.getMessage());
        }
    }
}
