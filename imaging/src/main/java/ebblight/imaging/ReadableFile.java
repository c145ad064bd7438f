package ebblight.imaging;

import ebblight.imaging.raw.RawDeveloper;
import ebblight.imaging.raw.RawException;
import ebblight.imaging.raw.RawFacts;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

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
        return reading(file, () -> {
            FrameFacts facts = ExifReader.read(file);
            // Where there is Exif it is right: LibRaw takes an exposure time of 0 for one of 1 s.
            boolean none = facts.camera().isEmpty() && facts.exposureSeconds().isEmpty();
            return none && PictureReader.isRaw(file) ? completed(facts, Files.readAllBytes(file)) : facts;
        });
    }

    /** Some makers' RAW files have no Exif and keep these facts where only LibRaw finds them. */
    private static FrameFacts completed(FrameFacts facts, byte[] bytes) {
        try {
            RawFacts found = RawDeveloper.shared().facts(bytes);
            return new FrameFacts(
                    or(facts.exposureSeconds(), found.exposureSeconds()),
                    or(facts.fNumber(), found.fNumber()),
                    or(facts.isoSpeed(), found.isoSpeed()),
                    or(facts.focalMillimetres(), found.focalMillimetres()),
                    facts.focal35Millimetres(),
                    facts.taken().or(found::taken),
                    facts.offset(),
                    facts.camera().or(() -> Optional.of(found.camera())),
                    facts.orientation(),
                    facts.warnings());
        } catch (RawException e) {
            return facts; // said of the picture itself when that is read
        }
    }

    private static OptionalDouble or(OptionalDouble told, float found) {
        return told.isPresent() || !(found > 0) || Float.isInfinite(found) ? told : OptionalDouble.of(found);
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
        } catch (UnreadableInputException e) {
            throw e;
        } catch (IOException e) {
            throw new UnreadableInputException(file, UnreadableInputException.reason(e));
        } catch (OutOfMemoryError e) {
            throw new UnreadableInputException(file, "could not be read: " + e.getMessage());
        }
    }
}
