package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clips written and read again: times, pixels, noise; and what is left of one that was given up. */
class ClipWriterTest {

    private static final int WIDTH = 192;
    private static final int HEIGHT = 128;
    private static final int FRAMES = 45;
    private static final double RATE = 29.97;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** A coloured slope with a moving bright spot, and noise of so many codes. */
    static byte[] frame(int width, int height, int k, double noise) {
        Random random = new Random(k);
        byte[] rgb = new byte[3 * width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double spot = 60 * Math.exp(-(Math.pow(x - 20 - 2 * k, 2) + Math.pow(y - 60, 2)) / 200.0);
                double grain = noise * random.nextGaussian();
                double[] value = {
                    40 + 150.0 * x / width + spot + grain,
                    60 + 100.0 * y / height + spot + grain,
                    170 - 90.0 * x / width + grain
                };
                for (int c = 0; c < 3; c++) {
                    rgb[3 * (y * width + x) + c] = (byte) Math.max(0, Math.min(255, Math.round(value[c])));
                }
            }
        }
        return rgb;
    }

    private Path write(String name, double noise) throws Exception {
        Path file = folder.resolve(name);
        try (ClipWriter writer = ClipWriter.begin(file, WIDTH, HEIGHT, RATE)) {
            for (int k = 0; k < FRAMES; k++) {
                writer.add(frame(WIDTH, HEIGHT, k, noise));
            }
            writer.commit();
        }
        return file;
    }

    private static void read(Path file, Consumer<FrameVisitor.Arrival> each) throws Exception {
        Inputs.open(List.of(file), 0, true).visit(frames -> frames.forEach(each), Work.alone());
    }

    @Test
    void whatIsReadIsWhatWasWritten() throws Exception {
        Path file = write("clip.mp4", 0);
        List<Double> times = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        double[] bias = new double[3];
        read(file, arrival -> {
            byte[] wanted = frame(WIDTH, HEIGHT, arrival.index(), 0);
            PackedFrame frame = PackedFrame.of(arrival.frame());
            double sum = 0;
            for (int i = 0; i < wanted.length; i++) {
                double off = 255.0 * frame.code(i) / 4095 - (wanted[i] & 0xFF);
                sum += Math.abs(off);
                bias[i % 3] += off;
            }
            times.add(arrival.seconds());
            errors.add(sum / wanted.length);
        });
        assertThat(times).hasSize(FRAMES);
        for (int k = 0; k < FRAMES; k++) {
            assertThat(times.get(k) - times.get(0)).isCloseTo(k / RATE, within(1e-4));
            assertThat(errors.get(k)).isLessThan(1.5);
        }
        // A wrong matrix or range would shift the colours as a whole by several codes.
        for (double b : bias) {
            assertThat(b / (FRAMES * WIDTH * HEIGHT)).isCloseTo(0, within(0.3));
        }
    }

    /** Noise of 4 codes: what the measurement takes for the sensor's must survive coding. */
    @Test
    void noiseSurvives() throws Exception {
        Path file = write("noisy.mp4", 4);
        List<Double> noise = new ArrayList<>();
        read(file, arrival -> {
            byte[] clean = frame(WIDTH, HEIGHT, arrival.index(), 0);
            PackedFrame frame = PackedFrame.of(arrival.frame());
            double squares = 0;
            for (int i = 1; i < clean.length; i += 3) {
                double off = 255.0 * frame.code(i) / 4095 - (clean[i] & 0xFF);
                squares += off * off;
            }
            noise.add(Math.sqrt(squares / (clean.length / 3.0)));
        });
        assertThat(noise).hasSize(FRAMES).allSatisfy(n -> assertThat(n).isCloseTo(4, within(0.6)));
    }

    /** ExifTool names what the file says of its colours. */
    @Test
    void theFileSaysWhatItsCodesMean() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Path file = write("clip.mp4", 0);
        String told = OtherProgram.output(
                "exiftool",
                "-s",
                "-CompressorID",
                "-ImageWidth",
                "-VideoFrameRate",
                "-ColorPrimaries",
                "-TransferCharacteristics",
                "-MatrixCoefficients",
                "-Error",
                "-Warning",
                file.toString());
        assertThat(told.replaceAll(" +: ", "="))
                .contains("CompressorID=avc1")
                .contains("ImageWidth=192")
                .contains("VideoFrameRate=29.97")
                .contains("ColorPrimaries=BT.709")
                .contains("TransferCharacteristics=BT.709")
                .contains("MatrixCoefficients=BT.709")
                .doesNotContain("Error")
                .doesNotContain("Warning");
    }

    @Test
    void aClipThatIsGivenUpLeavesNothing() throws Exception {
        Path file = folder.resolve("clip.mp4");
        try (ClipWriter writer = ClipWriter.begin(file, WIDTH, HEIGHT, RATE)) {
            writer.add(frame(WIDTH, HEIGHT, 0, 0));
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void oddSizesAreRefused() {
        assertThatThrownBy(() -> ClipWriter.begin(folder.resolve("clip.mp4"), 191, HEIGHT, RATE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("191");
    }
}
