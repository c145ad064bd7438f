package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Stacks against computations that are not ours. */
class StackReferenceTest {

    private static final int WIDTH = 60;
    private static final int HEIGHT = 40;
    private static final int SAMPLES = 3 * WIDTH * HEIGHT;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** NumPy in double; the sRGB curve as IEC 61966-2-1 gives it, written out again in Python. */
    @ParameterizedTest
    @EnumSource(StackOptions.As.class)
    void everyKindOfStackIsThatOfNumpyToOneCode(StackOptions.As as) throws Exception {
        OtherProgram.needNumpy();
        int count = 12; // even: the median lies between two frames
        ByteBuffer raw = ByteBuffer.allocate(count * SAMPLES);
        for (int k = 0; k < count; k++) {
            int[] codes = TestPictures.random(SAMPLES, 255, k);
            TestPictures.write8(folder.resolve(String.format(Locale.ROOT, "f%02d.png", k)), codes, WIDTH, HEIGHT);
            for (int code : codes) {
                raw.put((byte) code);
            }
        }
        Path codes = folder.resolve("codes.bin");
        Path expected = folder.resolve("expected.bin");
        Files.write(codes, raw.array());
        String take =
                switch (as) {
                    case MEAN -> "l.mean(0)";
                    case BRIGHTEST -> "l.max(0)";
                    case DARKEST -> "l.min(0)";
                    case MEDIAN -> "np.median(l,0)";
                };
        OtherProgram.python(
                folder,
                "import numpy as np,sys\n"
                        + "a=np.fromfile(sys.argv[1],np.uint8).reshape(" + count + ",-1)/255\n"
                        + "l=np.where(a<=.04045,a/12.92,((a+.055)/1.055)**2.4)\n"
                        + "m=" + take + "\n"
                        + "c=np.where(m<=.0031308,12.92*m,1.055*m**(1/2.4)-.055)\n"
                        + "np.rint(c*65535).astype('<u2').tofile(sys.argv[2])\n",
                codes,
                expected);
        StackOptions options = new StackOptions(as, Optional.empty(), Optional.empty(), false);
        StackResult result = Stacker.stack(Inputs.open(List.of(folder), 10, false), options, Work.alone());
        assertThat(result.frames()).isEqualTo(count);
        ByteBuffer told = ByteBuffer.wrap(Files.readAllBytes(expected)).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(result.picture().code(i)).isCloseTo(told.getShort(2 * i) & 0xFFFF, within(1));
        }
    }

    /** NumPy, on the codes of 16-bit TIFF and on JPEG as the JDK decodes it. */
    @ParameterizedTest
    @ValueSource(strings = {"tif", "jpg"})
    void aMeanOfEveryFormatIsThatOfNumpyToOneCode(String format) throws Exception {
        OtherProgram.needNumpy();
        int count = 9;
        boolean wide = format.equals("tif");
        ByteBuffer raw = ByteBuffer.allocate(2 * count * SAMPLES).order(ByteOrder.LITTLE_ENDIAN);
        for (int k = 0; k < count; k++) {
            Path file = folder.resolve("f" + k + "." + format);
            int[] codes = TestPictures.random(SAMPLES, wide ? 65535 : 255, 50 + k);
            if (wide) {
                TestPictures.write16(file, codes, WIDTH, HEIGHT);
            } else {
                TestPictures.write8(file, codes, WIDTH, HEIGHT);
                codes = TestPictures.read8(file);
            }
            for (int code : codes) {
                raw.putShort((short) code);
            }
        }
        Path codes = Files.write(folder.resolve("codes.bin"), raw.array());
        Path expected = folder.resolve("expected.bin");
        OtherProgram.python(
                folder,
                "import numpy as np,sys\n"
                        + "a=np.fromfile(sys.argv[1],'<u2').reshape(" + count + ",-1)/" + (wide ? 65535 : 255) + "\n"
                        + "m=np.where(a<=.04045,a/12.92,((a+.055)/1.055)**2.4).mean(0)\n"
                        + "c=np.where(m<=.0031308,12.92*m,1.055*m**(1/2.4)-.055)\n"
                        + "np.rint(c*65535).astype('<u2').tofile(sys.argv[2])\n",
                codes,
                expected);
        StackResult result = Stacker.stack(Inputs.open(List.of(folder), 10, false), StackOptions.mean(), Work.alone());
        assertThat(result.frames()).isEqualTo(count);
        ByteBuffer told = ByteBuffer.wrap(Files.readAllBytes(expected)).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(result.picture().code(i)).isCloseTo(told.getShort(2 * i) & 0xFFFF, within(1));
        }
    }

    /** REFERENCES 6: photons of mean 1000, noise of the mean of 1, 4, 16, 64 frames 31.62, 15.81, 7.91, 3.95. */
    @Test
    void noiseFallsWithTheRootOfTheNumberOfFrames() throws Exception {
        double mean = 1000;
        double perPhoton = 20;
        Poisson photons = new Poisson(mean, 11);
        int frames = 64;
        for (int k = 0; k < frames; k++) {
            int[] codes = new int[SAMPLES];
            for (int i = 0; i < SAMPLES; i++) {
                codes[i] = (int) (perPhoton * photons.next());
            }
            Path file = folder.resolve(String.format(Locale.ROOT, "f%02d.tif", k));
            LocalDateTime taken = LocalDateTime.of(2026, 5, 1, 20, 0, k % 60);
            TestPictures.writeLinear(file, codes, WIDTH, HEIGHT, 0.5, taken);
        }
        for (int n : new int[] {1, 4, 16, 64}) {
            List<Path> some;
            try (var list = Files.list(folder)) {
                some = list.sorted().limit(n).toList();
            }
            StackResult result = Stacker.stack(
                    Inputs.open(some, 0, false),
                    new StackOptions(StackOptions.As.MEAN, Optional.empty(), Optional.empty(), true),
                    Work.alone());
            double sum = 0;
            double squares = 0;
            for (int i = 0; i < SAMPLES; i++) {
                double counted = result.picture().code(i) / perPhoton;
                sum += counted;
                squares += counted * counted;
            }
            double average = sum / SAMPLES;
            double noise = Math.sqrt(squares / SAMPLES - average * average);
            // 7200 samples tell a standard deviation to 0.8 %; three of those.
            assertThat(noise).isCloseTo(Math.sqrt(mean / n), within(0.025 * Math.sqrt(mean / n)));
            assertThat(average).isCloseTo(mean, within(3 * Math.sqrt(mean / n / SAMPLES) + 0.05));
        }
    }

    /** Counts of photons by inversion of the distribution's sum. */
    private static final class Poisson {
        private final Random random;
        private final double[] upTo;

        Poisson(double mean, long seed) {
            random = new Random(seed);
            upTo = new double[(int) (2 * mean)];
            double logTerm = -mean;
            double sum = 0;
            for (int k = 0; k < upTo.length; k++) {
                sum += Math.exp(logTerm);
                upTo[k] = sum;
                logTerm += Math.log(mean / (k + 1));
            }
        }

        int next() {
            int found = java.util.Arrays.binarySearch(upTo, random.nextDouble());
            return found < 0 ? -found - 1 : found;
        }
    }
}
