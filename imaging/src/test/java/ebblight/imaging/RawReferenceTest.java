package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Real RAW files (two Canon CRW, a Kodak KDC with oblong pixels, a DNG) as LibRaw's own program {@code dcraw_emu -4 -T -w
 * -o 4} develops them: 16-bit linear, camera white balance, ProPhoto primaries.
 */
class RawReferenceTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @BeforeEach
    void needTheProgram() throws Exception {
        OtherProgram.need("dcraw_emu (Debian: libraw-bin)", "sh", "-c", "command -v dcraw_emu");
    }

    static List<Path> raws() throws IOException {
        try (Stream<Path> list = Files.list(OtherProgram.shared("raw"))) {
            return list.filter(PictureReader::isRaw).sorted().toList();
        }
    }

    @Test
    void everySampleIsThatOfLibRawsOwnProgram() throws Exception {
        assertThat(raws()).hasSize(4);
        for (Path file : raws()) {
            Path copy = Files.copy(file, folder.resolve(file.getFileName().toString()));
            OtherProgram.output("dcraw_emu", "-4", "-T", "-w", "-o", "4", copy.toString());
            Raster told = ImageIO.read(Path.of(copy + ".tiff").toFile()).getRaster();
            short[] expected = ((DataBufferUShort) told.getDataBuffer()).getData();
            try (Mat memory = new Mat()) {
                PackedFrame ours = PictureReader.decode(file, ReadableFile.bytes(file), RawAs.DEVELOPED, memory);
                assertThat(ours.width()).as("width of " + file).isEqualTo(told.getWidth());
                assertThat(ours.height()).as("height of " + file).isEqualTo(told.getHeight());
                int differing = 0;
                for (int i = 0; i < expected.length; i++) {
                    differing += ours.code(i) == (expected[i] & 0xFFFF) ? 0 : 1;
                }
                assertThat(differing).as("differing samples of " + file).isZero();
            }
        }
    }

    /** ExifTool reads them in its own way, and the camera's clock is told without a zone by both. */
    @Test
    void exposureApertureIsoFocalLengthAndTimeAreThoseOfExifTool() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        for (Path file : raws()) {
            String[] told = OtherProgram.output(
                            "exiftool",
                            "-T",
                            "-n",
                            "-ExposureTime",
                            "-FNumber",
                            "-ISO",
                            "-FocalLength",
                            "-DateTimeOriginal",
                            file.toString())
                    .split("\t", -1);
            FrameFacts facts = ReadableFile.facts(file);
            near(file + " exposure time", facts.exposureSeconds(), told[0]);
            near(file + " f-number", facts.fNumber(), told[1]);
            near(file + " ISO", facts.isoSpeed(), told[2]);
            near(file + " focal length", facts.focalMillimetres(), told[3]);
            assertThat(facts.taken()
                            .map(DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss")::format)
                            .orElse("-"))
                    .as(file + " date")
                    .isEqualTo(told[4].isBlank() ? "-" : told[4].strip());
        }
    }

    /** CRW files hold each value twice, as asked for and as set, up to an eighth of a stop apart. */
    private static void near(String what, OptionalDouble ours, String told) {
        double value = told.equals("-") ? 0 : Double.parseDouble(told);
        if (value <= 0) {
            assertThat(ours).as(what).isEmpty();
        } else {
            assertThat(ours.orElse(Double.NaN)).as(what).isCloseTo(value, withinPercentage(4.5));
        }
    }
}
