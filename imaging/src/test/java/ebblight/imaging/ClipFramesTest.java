package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clips as they come: repeated frames, cut off, of another shape than their header says. */
class ClipFramesTest {

    private static final int WIDTH = 192;
    private static final int HEIGHT = 128;
    private static final double RATE = 25;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** A clip that shows the numbered frames one after the other. */
    private Path clip(int... shown) throws Exception {
        Path file = folder.resolve("clip.mp4");
        try (ClipWriter writer = ClipWriter.begin(file, WIDTH, HEIGHT, RATE)) {
            for (int k : shown) {
                writer.add(ClipWriterTest.frame(WIDTH, HEIGHT, k, 3));
            }
            writer.commit();
        }
        return file;
    }

    private static int[] upTo(int n) {
        int[] numbers = new int[n];
        Arrays.setAll(numbers, k -> k);
        return numbers;
    }

    private static SurveyFrames survey(Path file, Work work) throws Exception {
        return SurveyReader.read(Inputs.open(List.of(file), 0, true), 96, work);
    }

    @Test
    void theSurveyIsTheSameBitsForAnyNumberOfThreads() throws Exception {
        Path file = clip(upTo(30));
        SurveyFrames alone = survey(file, Work.alone());
        assertThat(alone.clip().frames()).isEqualTo(15); // 12 a second of 25
        assertThat(alone.sourceFrames()).isEqualTo(30);
        assertThat(alone.framesPerSecond()).isCloseTo(RATE, within(1e-3));
        for (int threads : new int[] {1, 2, 4}) {
            try (Threads work = new Threads(threads)) {
                SurveyFrames again = survey(file, work);
                for (int i = 0; i < alone.clip().frames(); i++) {
                    assertThat(again.clip().bytes(i)).isEqualTo(alone.clip().bytes(i));
                }
            }
        }
    }

    /** The mean of a clip is that of its frames: numbers from the frames as they are decoded, in double. */
    @Test
    void aStackedClipIsTheMeanOfItsFrames() throws Exception {
        Path file = clip(upTo(11));
        double[] sum = new double[3 * WIDTH * HEIGHT];
        Inputs.open(List.of(file), 0, true)
                .visit(
                        frames -> frames.forEach(each -> {
                            PackedFrame frame = PackedFrame.of(each.frame());
                            for (int i = 0; i < sum.length; i++) {
                                sum[i] += PlainStack.linear(frame.code(i) / 4095.0);
                            }
                        }),
                        Work.alone());
        try (Threads work = new Threads(2)) {
            StackResult result = Stacker.stack(Inputs.open(List.of(file), 0, false), StackOptions.mean(), work);
            assertThat(result.frames()).isEqualTo(11);
            assertThat(result.seconds().orElse(0)).isCloseTo(11 / RATE, within(1e-6));
            for (int i = 0; i < sum.length; i++) {
                double expected = 65535 * PlainStack.code(sum[i] / 11);
                assertThat((double) result.picture().code(i)).isCloseTo(expected, within(1.0));
            }
        }
    }

    @Test
    void aClipThatWasCutOffIsReadAsFarAsItGoes() throws Exception {
        Path whole = clip(upTo(90));
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = folder.resolve("cut.mp4");
        Files.write(cut, Arrays.copyOf(bytes, bytes.length * 6 / 10));
        FrameSource source = Inputs.open(List.of(cut), 0, true);
        SurveyFrames read = SurveyReader.read(source, 96, Work.alone());
        assertThat(read.sourceFrames()).isBetween(40, 65);
        assertThat(source.warnings()).anyMatch(w -> w.contains("cut.mp4") && w.contains("of 3.6 s"));
    }

    /** The decoder runs ahead on a thread of its own, which must not outlive who takes the frames. */
    @Test
    void nobodyDecodesWhatIsNotWantedAnyMore() throws Exception {
        FrameSource source = Inputs.open(List.of(clip(upTo(90))), 0, true);
        assertThat(SurveyReader.first(source, 96, Work.alone()).clip().frames()).isEqualTo(1);
        assertThat(decoders()).isZero();
        assertThatThrownBy(() -> source.visit(
                        frames -> {
                            assertThat(decoders()).isEqualTo(1);
                            throw new Work.Cancelled();
                        },
                        Work.alone()))
                .isInstanceOf(Work.Cancelled.class);
        assertThat(decoders()).isZero();
        // and the next reading begins with the first frame again
        assertThat(SurveyReader.read(source, 96, Work.alone()).sourceFrames()).isEqualTo(90);
    }

    private static long decoders() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> "decoder".equals(thread.getName()))
                .count();
    }

    /** One packet in the middle overwritten: what follows still counts, and one piece is one piece. */
    @Test
    void aDamagedPieceIsLeftOutAndCounted() throws Exception {
        byte[] bytes = Files.readAllBytes(clip(upTo(90)));
        byte[] noise = new byte[400];
        new Random(1).nextBytes(noise);
        System.arraycopy(noise, 0, bytes, bytes.length / 2, noise.length);
        Path damaged = Files.write(folder.resolve("damaged.mp4"), bytes);
        FrameSource source = Inputs.open(List.of(damaged), 0, true);
        SurveyFrames read = SurveyReader.read(source, 96, Work.alone());
        assertThat(read.sourceFrames()).isBetween(45, 90);
        assertThat(source.warnings()).anyMatch(w -> w.contains("damaged"));
        assertThat(source.warnings()).noneMatch(w -> w.contains("1 pieces"));
    }

    @Test
    void aClipWithoutItsIndexSaysWhatToDo() throws Exception {
        byte[] bytes = Files.readAllBytes(clip(upTo(10)));
        Path cut = folder.resolve("cut.mp4");
        Files.write(cut, Arrays.copyOf(bytes, 200));
        assertThatThrownBy(() -> Inputs.open(List.of(cut), 0, true))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(cut.toString())
                .hasMessageContaining("copy it again");
    }

    /** The header of this clip claims 444 frames, 68 are there (README of the data). */
    @Test
    void aHeaderThatClaimsTooMuchIsNotBelieved() throws Exception {
        Path file = OtherProgram.shared("clips/foliage/tree.avi");
        SurveyFrames read = SurveyReader.read(Inputs.open(List.of(file), 15, true), 480, Work.alone());
        assertThat(read.sourceFrames()).isBetween(66, 68); // without repeats
        assertThat(read.medianGapSeconds()).isCloseTo(1 / 15.0, within(1e-9));
    }

    /** ExifTool: rotation 90, 1920 × 1080. */
    @Test
    void aPhoneHeldUprightGivesUprightFrames() throws Exception {
        Path file = OtherProgram.shared("clips/moving_camera/colliding_waves.mp4");
        SurveyFrames read = survey(file, Work.alone());
        assertThat(read.sourceHeight()).isGreaterThan(read.sourceWidth());
    }

    @Test
    void frameTimesAreThoseOfTheStream() throws Exception {
        Path file = OtherProgram.shared("clips/waterfall/water.mp4");
        SurveyFrames read = survey(file, Work.alone());
        // README of the data: 180 frames at 29.97 a second.
        assertThat(read.sourceFrames()).isEqualTo(180);
        assertThat(read.framesPerSecond()).isCloseTo(29.97, within(0.005));
        assertThat(read.sourceWidth()).isEqualTo(1920);
        assertThat(read.sourceHeight()).isEqualTo(1080);
    }
}
