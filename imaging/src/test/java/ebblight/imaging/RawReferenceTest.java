package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
}
