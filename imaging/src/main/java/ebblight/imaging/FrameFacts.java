package ebblight.imaging;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a file says of how it was taken (Exif 2.32). What is missing, zero or impossible is absent; damage leaves a
 * warning and never fails.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param isoSpeed sensitivity
 * @param focalMillimetres focal length
 * @param focal35Millimetres focal length that gives the same view on 36 × 24 mm
 * @param taken local date and time with its part of a second
 * @param offset of the local time from UTC
 * @param camera maker and model
 * @param orientation Exif value 1 to 8
 * @param warnings what could not be read
 */
public record FrameFacts(
        OptionalDouble exposureSeconds,
        OptionalDouble fNumber,
        OptionalDouble isoSpeed,
        OptionalDouble focalMillimetres,
        OptionalDouble focal35Millimetres,
        Optional<LocalDateTime> taken,
        Optional<ZoneOffset> offset,
        Optional<String> camera,
        OptionalInt orientation,
        List<String> warnings) {

    /** What a picture says of itself, without reading its pixels. */
    public static FrameFacts of(Path file) throws UnreadableInputException {
        return ReadableFile.facts(file);
    }

    /** Nothing known. */
    public static FrameFacts none() {
        return new FrameFacts(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                List.of());
    }
}
