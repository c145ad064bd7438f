package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file with a profile of its own, read and written again: neither its colours nor its profile may drift. */
class ProfileRoundTripTest {

    private static final int WIDTH = 256;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path write(String name, RgbPicture light, IccProfile profile) throws Exception {
        Path file = folder.resolve(name);
        TiffWriter.write(
                file,
                CodedPicture.of(light, profile, Work.alone()),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "round trip"),
                Work.alone());
        return file;
    }

    @Test
    void aTaggedFileComesBackWithItsProfileAndItsCodes() throws Exception {
        RgbPicture light = RgbPicture.black(WIDTH, 3);
        for (int x = 0; x < WIDTH; x++) {
            light.red()[x] = x / 255f;
            light.green()[WIDTH + x] = x / 255f;
            light.blue()[2 * WIDTH + x] = (float) Math.pow(x / 255.0, 2.2);
        }
        Path first = write("a.tif", light, IccProfile.proPhoto());
        LightPicture read = LightPicture.read(first, Work.alone());
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < 3 * WIDTH; i++) {
                // half a code of 16 bits, where the curve of ROMM RGB (gamma 1.8) is steepest: 1.8 / 2 / 65535
                assertThat(Math.abs(read.light().plane(c)[i] - light.plane(c)[i]))
                        .isLessThan(1.5e-5f);
            }
        }
        Path second = write("b.tif", read.light(), read.profile());
        assertThat(Files.readAllBytes(second)).isEqualTo(Files.readAllBytes(first));
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        // red primary of ROMM RGB adapted to D50 (ISO 22028-2; from memory): X 0.7977, Y 0.2880, Z 0
        String red = OtherProgram.output("exiftool", "-s3", "-ICC_Profile:RedMatrixColumn", second.toString());
        String[] xyz = red.strip().split(" ", -1);
        assertThat(Double.parseDouble(xyz[0])).isBetween(0.7967, 0.7987);
        assertThat(Double.parseDouble(xyz[1])).isBetween(0.2870, 0.2890);
    }
}
