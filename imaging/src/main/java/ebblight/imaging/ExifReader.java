package ebblight.imaging;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.imaging.tiff.TiffMetadataReader;
import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Reads the Exif fields of a file; every directory of the photograph's own kind is asked, the photograph's first. */
final class ExifReader {

    private static final Pattern DATE =
            Pattern.compile("(\\d{4})[:/-](\\d{2})[:/-](\\d{2})[ T](\\d{2}):(\\d{2}):(\\d{2}).*", Pattern.DOTALL);
    /** No lens in air gathers more (common practice): what is below is damage. */
    private static final double SMALLEST_F_NUMBER = 0.5;

    private final Metadata metadata;

    private ExifReader(Metadata metadata) {
        this.metadata = metadata;
    }

    /**
     * Reads only as much of the file as its metadata take: of a JPEG what comes before its pixels, of a TIFF its
     * directories wherever they stand.
     */
    static FrameFacts read(Path file) throws IOException {
        List<String> warnings = new ArrayList<>();
        Metadata metadata = new Metadata();
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            in.mark(4);
            byte[] head = in.readNBytes(4);
            in.reset();
            metadata = isTiff(head)
                    ? TiffMetadataReader.readMetadata(file.toFile())
                    : ImageMetadataReader.readMetadata(in, Files.size(file));
        } catch (ImageProcessingException | EOFException | RuntimeException e) {
            warnings.add("metadata could not be read: " + e.getMessage());
        }
        for (Directory directory : metadata.getDirectories()) {
            for (String error : directory.getErrors()) {
                warnings.add(directory.getName() + ": " + error);
            }
        }
        return new ExifReader(metadata).facts(warnings);
    }

    private static boolean isTiff(byte[] head) {
        boolean little = head.length == 4 && head[0] == 'I' && head[1] == 'I' && head[2] == 42 && head[3] == 0;
        boolean big = head.length == 4 && head[0] == 'M' && head[1] == 'M' && head[2] == 0 && head[3] == 42;
        return little || big;
    }

    private FrameFacts facts(List<String> warnings) {
        OptionalDouble aperture = positive(ExifDirectoryBase.TAG_FNUMBER);
        if (aperture.isPresent() && aperture.getAsDouble() < SMALLEST_F_NUMBER) {
            warnings.add("f/" + aperture.getAsDouble() + " is no aperture; left out");
            aperture = OptionalDouble.empty();
        }
        return new FrameFacts(
                positive(ExifDirectoryBase.TAG_EXPOSURE_TIME),
                aperture,
                positive(ExifDirectoryBase.TAG_ISO_EQUIVALENT),
                positive(ExifDirectoryBase.TAG_FOCAL_LENGTH),
                positive(ExifDirectoryBase.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH),
                taken(),
                offset(),
                camera(),
                orientation(),
                List.copyOf(warnings));
    }

    private List<ExifDirectoryBase> directories() {
        List<ExifDirectoryBase> list = new ArrayList<>(metadata.getDirectoriesOfType(ExifSubIFDDirectory.class));
        list.addAll(metadata.getDirectoriesOfType(ExifIFD0Directory.class));
        return list;
    }

    private OptionalDouble positive(int tag) {
        for (ExifDirectoryBase directory : directories()) {
            double number = number(directory.getObject(tag));
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

    private Optional<LocalDateTime> taken() {
        return date(ExifDirectoryBase.TAG_DATETIME_ORIGINAL, ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL)
                .or(() ->
                        date(ExifDirectoryBase.TAG_DATETIME_DIGITIZED, ExifDirectoryBase.TAG_SUBSECOND_TIME_DIGITIZED))
                .or(() -> date(ExifDirectoryBase.TAG_DATETIME, ExifDirectoryBase.TAG_SUBSECOND_TIME));
    }

    private Optional<LocalDateTime> date(int tag, int partTag) {
        return MatchedTime.of(DATE.matcher(text(tag).orElse("")), text(partTag).orElse(""));
    }

    private Optional<ZoneOffset> offset() {
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

    private Optional<String> camera() {
        Optional<String> make = text(ExifDirectoryBase.TAG_MAKE);
        Optional<String> model = text(ExifDirectoryBase.TAG_MODEL);
        return make.map(m -> m + model.map(x -> " " + x).orElse("")).or(() -> model);
    }

    private OptionalInt orientation() {
        for (ExifIFD0Directory directory : metadata.getDirectoriesOfType(ExifIFD0Directory.class)) {
            Integer value = directory.getInteger(ExifDirectoryBase.TAG_ORIENTATION);
            if (value != null && value >= 1 && value <= 8) {
                return OptionalInt.of(value);
            }
        }
        return OptionalInt.empty();
    }
}
