package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes into a stack, what is left out, and what is said of it. */
class StackerTest {

    private static final int WIDTH = 48;
    private static final int HEIGHT = 32;
    private static final int SAMPLES = 3 * WIDTH * HEIGHT;
    private static final LocalDateTime EVENING = LocalDateTime.of(2026, 5, 1, 21, 0, 0);

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private StackResult stack(StackOptions.As as, boolean linear) throws Exception {
        return stack(new StackOptions(as, Optional.empty(), Optional.empty(), linear), Work.alone());
    }

    private StackResult stack(StackOptions options, Work work) throws Exception {
        return Stacker.stack(Inputs.open(List.of(folder), 0, false), options, work);
    }

    @ParameterizedTest
    @EnumSource(StackOptions.As.class)
    void theFastStackAgreesWithThePlainOne(StackOptions.As as) throws Exception {
        int[][] frames = new int[19][];
        for (int k = 0; k < frames.length; k++) {
            frames[k] = TestPictures.random(SAMPLES, 255, 100 + k);
            TestPictures.write8(folder.resolve("f" + (10 + k) + ".png"), frames[k], WIDTH, HEIGHT);
        }
        int[] expected = PlainStack.of(frames, as);
        CodedPicture picture = stack(as, false).picture();
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(picture.code(i)).isCloseTo(expected[i], within(1));
        }
    }

    /** PNG and JPEG of 8 bits, TIFF and PNG of 16, and a clip. */
    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg", "tif", "png16", "mp4"})
    void theResultIsTheSameBitsForAnyNumberOfThreads(String kind) throws Exception {
        writeFrames(kind, 11);
        for (StackOptions.As as : StackOptions.As.values()) {
            StackOptions options = new StackOptions(as, Optional.empty(), Optional.empty(), false);
            short[] alone = stackWhole(options, Work.alone());
            for (int threads : new int[] {1, 2, 4}) {
                try (Threads work = new Threads(threads)) {
                    assertThat(stackWhole(options, work))
                            .as(as + " by " + threads)
                            .isEqualTo(alone);
                }
            }
        }
    }

    private short[] stackWhole(StackOptions options, Work work) throws Exception {
        Path clip = folder.resolve("f.mp4");
        List<Path> input = List.of(Files.exists(clip) ? clip : folder);
        return Stacker.stack(Inputs.open(input, 0, false), options, work)
                .picture()
                .codes();
    }

    private void writeFrames(String kind, int count) throws Exception {
        if (kind.equals("mp4")) {
            try (ClipWriter writer = ClipWriter.begin(folder.resolve("f.mp4"), WIDTH, HEIGHT, 25)) {
                for (int k = 0; k < count; k++) {
                    writer.add(ClipWriterTest.frame(WIDTH, HEIGHT, k, 6));
                }
                writer.commit();
            }
            return;
        }
        for (int k = 0; k < count; k++) {
            boolean wide = kind.equals("tif") || kind.equals("png16");
            int[] codes = TestPictures.random(SAMPLES, wide ? 65535 : 255, k);
            Path file = folder.resolve("f" + (10 + k) + "." + kind.replace("16", ""));
            if (wide) {
                TestPictures.write16(file, codes, WIDTH, HEIGHT);
            } else {
                TestPictures.write8(file, codes, WIDTH, HEIGHT);
            }
        }
    }

    @Test
    void oneFrameIsItselfAndSaysSo() throws Exception {
        int[] codes = TestPictures.random(SAMPLES, 255, 3);
        TestPictures.write8(folder.resolve("only.png"), codes, WIDTH, HEIGHT);
        StackResult result = stack(StackOptions.As.MEAN, false);
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(result.picture().code(i)).isCloseTo(257 * codes[i], within(1));
        }
        assertThat(result.frames()).isEqualTo(1);
        assertThat(result.warnings()).anyMatch(w -> w.contains("only one frame"));
    }

    @Test
    void noFrameIsAClearError() {
        assertThatThrownBy(() -> stack(StackOptions.As.MEAN, false))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(folder.toString())
                .hasMessageContaining("no picture");
    }

    @Test
    void eightAndSixteenBitsMix() throws Exception {
        int[] narrow = TestPictures.random(SAMPLES, 255, 5);
        int[] wide = TestPictures.random(SAMPLES, 65535, 6);
        TestPictures.write8(folder.resolve("a.png"), narrow, WIDTH, HEIGHT);
        TestPictures.write16(folder.resolve("b.png"), wide, WIDTH, HEIGHT);
        for (StackOptions.As as : StackOptions.As.values()) {
            StackResult result = stack(as, false);
            assertThat(result.frames()).isEqualTo(2);
            for (int i = 0; i < SAMPLES; i++) {
                double a = PlainStack.linear(narrow[i] / 255.0);
                double b = PlainStack.linear(wide[i] / 65535.0);
                double light =
                        switch (as) {
                            case MEAN, MEDIAN -> (a + b) / 2;
                            case BRIGHTEST -> Math.max(a, b);
                            case DARKEST -> Math.min(a, b);
                        };
                assertThat(result.picture().code(i))
                        .isCloseTo((int) Math.round(65535 * PlainStack.code(light)), within(1));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(StackOptions.As.class)
    void framesOfOtherExposureAreScaledToTheFirst(StackOptions.As as) throws Exception {
        int[] light = TestPictures.random(SAMPLES, 16000, 8);
        for (int k = 0; k < 3; k++) {
            int factor = 1 << k;
            int[] codes = Arrays.stream(light).map(c -> c * factor).toArray();
            TestPictures.writeLinear(
                    folder.resolve("f" + k + ".tif"), codes, WIDTH, HEIGHT, 0.5 * factor, EVENING.plusSeconds(10L * k));
        }
        StackResult result = stack(as, true);
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(result.picture().code(i)).isCloseTo(light[i], within(1));
        }
        assertThat(result.seconds()).hasValue(0.5 + 1 + 2);
        assertThat(result.warnings()).anyMatch(w -> w.contains("different exposure times"));
    }

    /** By hand: shots of 2 s that begin at 0, 3, 5 and 12 s leave 1, 0 and 5 s between them. */
    @Test
    void gapsBetweenExposuresAreCounted() throws Exception {
        int[] begins = {0, 3, 5, 12};
        for (int k = 0; k < begins.length; k++) {
            int[] codes = TestPictures.random(SAMPLES, 65535, k);
            TestPictures.writeLinear(
                    folder.resolve("f" + k + ".tif"), codes, WIDTH, HEIGHT, 2, EVENING.plusSeconds(begins[k]));
        }
        StackResult result = stack(StackOptions.As.MEAN, true);
        assertThat(result.seconds()).hasValue(8);
        assertThat(result.gaps()).contains(new StackResult.Gaps(2, 6, 5));
    }

    @Test
    void darksTakeAwayWhatTheSensorGivesWithoutLight() throws Exception {
        int[] scene = TestPictures.random(SAMPLES, 40000, 1);
        int[] dark = TestPictures.random(SAMPLES, 20000, 2);
        Path darks = Files.createDirectory(folder.resolve("darks"));
        for (int k = -1; k <= 1; k += 2) {
            int offset = 100 * k; // the mean of the darks is the dark, no single one is
            int[] codes =
                    Arrays.stream(dark).map(c -> Math.max(0, c + 200 + offset)).toArray();
            TestPictures.writeLinear(darks.resolve("d" + (k + 1) + ".tif"), codes, WIDTH, HEIGHT, 1, EVENING);
        }
        int[] sum = new int[SAMPLES];
        Arrays.setAll(sum, i -> scene[i] + dark[i] + 200);
        TestPictures.writeLinear(folder.resolve("f.tif"), sum, WIDTH, HEIGHT, 1, EVENING);
        StackOptions options = new StackOptions(StackOptions.As.MEAN, Optional.of(darks), Optional.empty(), true);
        CodedPicture picture = stack(options, Work.alone()).picture();
        for (int i = 0; i < SAMPLES; i++) {
            assertThat(picture.code(i)).isCloseTo(scene[i], within(1));
        }
    }

    @Test
    void darksOfAnotherSizeAreRefused() throws Exception {
        Path darks = Files.createDirectory(folder.resolve("darks"));
        TestPictures.write8(darks.resolve("d.png"), TestPictures.random(SAMPLES, 20, 2), HEIGHT, WIDTH);
        TestPictures.write8(folder.resolve("f.png"), TestPictures.random(SAMPLES, 255, 2), WIDTH, HEIGHT);
        StackOptions options = new StackOptions(StackOptions.As.MEAN, Optional.of(darks), Optional.empty(), true);
        assertThatThrownBy(() -> stack(options, Work.alone()))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("32 × 48");
    }

    /** Real dark frames: a sensor's hot pixels grow with time and are gone after a matching dark. */
    @Test
    void hotPixelsOfARealSensorGoAway() throws Exception {
        Path real = OtherProgram.shared("darks");
        Path darks = Files.createDirectory(folder.resolve("darks"));
        Files.copy(real.resolve("d1_dark_3916ms_2019-02-08-171307-0003.tif"), darks.resolve("d.tif"));
        Files.copy(real.resolve("d1_dark_3916ms_2019-02-08-171307-0004.tif"), folder.resolve("f.tif"));
        StackOptions with = new StackOptions(StackOptions.As.MEAN, Optional.of(darks), Optional.empty(), false);
        double before = hotLight(stack(StackOptions.As.MEAN, false).picture());
        double after = hotLight(stack(with, Work.alone()).picture());
        assertThat(before).isGreaterThan(0);
        assertThat(after).isLessThan(before / 20);
    }

    /** Light above that of code 8 of 255. */
    private static double hotLight(CodedPicture picture) {
        double light = 0;
        for (int i = 0; i < 3 * picture.width() * picture.height(); i += 3) {
            light += Math.max(0, PlainStack.linear(picture.code(i) / 65535.0) - PlainStack.linear(8 / 255.0));
        }
        return light;
    }
}
