package ebblight.imaging;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

    private static final Pattern DATE =
            Pattern.compile("(\\d{4})[:/-](\\d{2})[:/-](\\d{2})[ T](\\d{2}):(\\d{2}):(\\d{2}).*", Pattern.DOTALL);

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

    /** Reads the facts of a file's bytes. */
    public static FrameFacts of(byte[] file) {
        Metadata metadata;
        try {
            metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(file), file.length);
        } catch (ImageProcessingException | IOException | RuntimeException e) {
            return withWarning("metadata could not be read: " + e.getMessage());
        }
        List<String> warnings = new ArrayList<>();
        for (Directory directory : metadata.getDirectories()) {
            for (String error : directory.getErrors()) {
                warnings.add(directory.getName() + ": " + error);
            }
        }
        Facts facts = new Facts(metadata);
        return new FrameFacts(
                facts.positive(ExifDirectoryBase.TAG_EXPOSURE_TIME),
                facts.positive(ExifDirectoryBase.TAG_FNUMBER),
                facts.positive(ExifDirectoryBase.TAG_ISO_EQUIVALENT),
                facts.positive(ExifDirectoryBase.TAG_FOCAL_LENGTH),
                facts.positive(ExifDirectoryBase.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH),
                facts.taken(),
                facts.offset(),
                facts.camera(),
                facts.orientation(),
                List.copyOf(warnings));
    }

    private static FrameFacts withWarning(String warning) {
        FrameFacts none = none();
        return new FrameFacts(
                none.exposureSeconds,
                none.fNumber,
                none.isoSpeed,
                none.focalMillimetres,
                none.focal35Millimetres,
                none.taken,
                none.offset,
                none.camera,
                none.orientation,
                List.of(warning));
    }

    /** The colour profile inside a file's bytes, when it has a readable one. */
    static Optional<IccProfile> profile(byte[] file) {
        return IccBytes.of(file).flatMap(IccProfile::read);
    }

    /** Seconds since the epoch if the local time were UTC: only differences mean anything. */
    public OptionalDouble localSeconds() {
        return taken.map(t -> t.toInstant(ZoneOffset.UTC))
                .map(t -> OptionalDouble.of(t.getEpochSecond() + t.getNano() * 1e-9))
                .orElseGet(OptionalDouble::empty);
    }

    /** Looks a tag up in every directory of the Exif kind, the photograph's own first. */
    private record Facts(Metadata metadata) {

        private List<ExifDirectoryBase> directories() {
            List<ExifDirectoryBase> list = new ArrayList<>(metadata.getDirectoriesOfType(ExifSubIFDDirectory.class));
            list.addAll(metadata.getDirectoriesOfType(ExifIFD0Directory.class));
            return list;
        }

        OptionalDouble positive(int tag) {
            for (ExifDirectoryBase directory : directories()) {
                Object value = directory.getObject(tag);
                double number = number(value);
                if (number > 0 && !Double.isInfinite(number)) {
                    return OptionalDouble.of(number);
                }
            }
            return OptionalDouble.empty();
        }

        private static double number(Object value) {
            if (value instanceof Rational rational) {
                return rational.getDenominator() == 0 ? 0 : rational.doubleValue();
            }
            if (value instanceof Number number) {
                return number.doubleValue();
            }
            if (value instanceof int[] array && array.length > 0) {
                return array[0];
            }
            return value instanceof short[] array && array.length > 0 ? array[0] & 0xFFFF : 0;
        }

        private Optional<String> text(int tag) {
            for (ExifDirectoryBase directory : directories()) {
                String value = directory.getString(tag);
                if (value != null && !value.isBlank()) {
                    return Optional.of(value.strip());
                }
            }
            return Optional.empty();
        }

        Optional<LocalDateTime> taken() {
            return text(ExifDirectoryBase.TAG_DATETIME_ORIGINAL)
                    .or(() -> text(ExifDirectoryBase.TAG_DATETIME_DIGITIZED))
                    .or(() -> text(ExifDirectoryBase.TAG_DATETIME))
                    .flatMap(this::date);
        }

        private Optional<LocalDateTime> date(String text) {
            Matcher m = DATE.matcher(text);
            if (!m.matches()) {
                return Optional.empty();
            }
            try {
                LocalDateTime whole = LocalDateTime.of(
                        Integer.parseInt(m.group(1)),
                        Integer.parseInt(m.group(2)),
                        Integer.parseInt(m.group(3)),
                        Integer.parseInt(m.group(4)),
                        Integer.parseInt(m.group(5)),
                        Integer.parseInt(m.group(6)));
                String part = text(ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL)
                        .or(() -> text(ExifDirectoryBase.TAG_SUBSECOND_TIME))
                        .orElse("");
                return Optional.of(
                        part.matches("\\d{1,9}")
                                ? whole.withNano((int) Math.round(Double.parseDouble("0." + part) * 1e9))
                                : whole);
            } catch (DateTimeException e) {
                return Optional.empty();
            }
        }

        Optional<ZoneOffset> offset() {
            return text(ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL)
                    .or(() -> text(ExifDirectoryBase.TAG_TIME_ZONE))
                    .flatMap(text -> {
                        try {
                            return Optional.of(ZoneOffset.of(text));
                        } catch (DateTimeException e) {
                            return Optional.empty();
                        }
                    });
        }

        Optional<String> camera() {
            Optional<String> make = text(ExifDirectoryBase.TAG_MAKE);
            Optional<String> model = text(ExifDirectoryBase.TAG_MODEL);
            return make.map(m -> m + model.map(x -> " " + x).orElse("")).or(() -> model);
        }

        OptionalInt orientation() {
            for (ExifIFD0Directory directory : metadata.getDirectoriesOfType(ExifIFD0Directory.class)) {
                Integer value = directory.getInteger(ExifDirectoryBase.TAG_ORIENTATION);
                if (value != null && value >= 1 && value <= 8) {
                    return OptionalInt.of(value);
                }
            }
            return OptionalInt.empty();
        }
    }
}
