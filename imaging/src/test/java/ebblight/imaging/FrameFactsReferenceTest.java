package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exif of thirteen real files (complete, odd, broken, cut off) against ExifTool, field by field. */
class FrameFactsReferenceTest {

    private static final DateTimeFormatter EXIF_DATE = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss.SS");
    private static final String[] TAGS = {
        "-EXIF:ExposureTime",
        "-EXIF:FNumber",
        "-EXIF:ISO",
        "-EXIF:FocalLength",
        "-EXIF:FocalLengthIn35mmFormat",
        "-EXIF:DateTimeOriginal",
        "-EXIF:SubSecTimeOriginal",
        "-EXIF:Make",
        "-EXIF:Model",
        "-IFD0:Orientation"
    };

    @Test
    void everyFieldIsThatOfExifTool() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        List<Path> files;
        try (Stream<Path> list = Files.list(OtherProgram.shared("exif"))) {
            files = list.sorted().toList();
        }
        assertThat(files).hasSize(13);
        for (Path file : files) {
            String[] command = new String[TAGS.length + 5];
            System.arraycopy(new String[] {"exiftool", "-T", "-n", "-f"}, 0, command, 0, 4);
            System.arraycopy(TAGS, 0, command, 4, TAGS.length);
            command[TAGS.length + 4] = file.toString();
            String[] told = OtherProgram.output(command).strip().split("\t", -1);
            FrameFacts facts = ReadableFile.facts(file);
            String name = String.valueOf(file.getFileName());
            same(name + " exposure time", facts.exposureSeconds(), told[0], 0);
            // In air no lens gathers more than f/0.5 (common practice): what is below is damage.
            same(name + " f-number", facts.fNumber(), told[1], 0.5);
            same(name + " ISO", facts.isoSpeed(), told[2], 0);
            same(name + " focal length", facts.focalMillimetres(), told[3], 0);
            same(name + " 35 mm focal length", facts.focal35Millimetres(), told[4], 0);
            assertThat(facts.taken().map(EXIF_DATE::format)).as(name + " date").isEqualTo(date(told[5], told[6]));
            assertThat(facts.camera().orElse("-"))
                    .as(name + " camera")
                    .isEqualTo(told[7].equals("-") ? "-" : told[7] + " " + told[8]);
            assertThat(
                            facts.orientation().isPresent()
                                    ? String.valueOf(facts.orientation().getAsInt())
                                    : "-")
                    .as(name + " orientation")
                    .isEqualTo(told[9]);
        }
    }

    /** Values that cannot be (zero, or below {@code least}) count as absent. */
    private static void same(String what, OptionalDouble ours, String told, double least) {
        double value = told.equals("-") ? 0 : Double.parseDouble(told);
        if (value <= 0 || value < least) {
            assertThat(ours).as(what).isEmpty();
        } else {
            assertThat(ours.orElse(Double.NaN)).as(what).isCloseTo(value, within(1e-8 * value));
        }
    }

    private static Optional<String> date(String date, String part) {
        return date.equals("-") || date.startsWith("0000")
                ? Optional.empty()
                : Optional.of(date + "." + (part.equals("-") ? "00" : part));
    }

    @Test
    void damageIsToldAndNeverFails(@TempDir Path folder) throws Exception {
        Path shared = OtherProgram.shared("exif");
        // ExifTool: "Bad offset for MakerNotes"
        assertThat(ReadableFile.facts(shared.resolve("MEI__Sanyo_S1.JPG")).warnings())
                .isNotEmpty();
        byte[] whole = Files.readAllBytes(shared.resolve("GPL2__exiv2-bug876.jpg"));
        Path cut = folder.resolve("cut.jpg");
        for (int length = 1; length < 4000; length += 37) {
            Files.write(cut, Arrays.copyOf(whole, length));
            assertThat(ReadableFile.facts(cut).warnings()).isNotEmpty();
        }
    }
}
