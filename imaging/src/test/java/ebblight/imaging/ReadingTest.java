package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder in which things went wrong gives a result and says what was left out; input without any frame is named. */
class ReadingTest {

    private static final int WIDTH = 48;
    private static final int HEIGHT = 32;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path good = Path.of("");

    @BeforeEach
    void writeOneGoodFrame() throws IOException {
        good = folder.resolve("a-good.jpg");
        TestPictures.write8(good, TestPictures.random(3 * WIDTH * HEIGHT, 255, 1), WIDTH, HEIGHT);
    }

    private StackResult stack() throws IOException {
        return Stacker.stack(Inputs.open(List.of(folder), 0, false), StackOptions.mean(), Work.alone());
    }

    private void leftOut(Path file, String reason) throws IOException {
        StackResult result = stack();
        assertThat(result.frames()).isEqualTo(1);
        assertThat(result.skipped()).hasSize(1).allSatisfy(s -> {
            assertThat(s.file()).isEqualTo(file);
            assertThat(s.reason()).contains(reason);
        });
        // The same file alone is an error that names it.
        assertThatThrownBy(() -> Stacker.stack(Inputs.open(List.of(file), 0, false), StackOptions.mean(), Work.alone()))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining(reason);
    }

    @Test
    void aTextFileNamedLikeAPicture() throws IOException {
        Path file = folder.resolve("b.jpg");
        Files.writeString(file, "this is no picture, it only says so");
        leftOut(file, "not a picture that can be decoded");
    }

    @Test
    void anEmptyFile() throws IOException {
        Path file = Files.createFile(folder.resolve("b.png"));
        leftOut(file, "is empty");
    }

    @Test
    void aJpegThatEndsTooEarly() throws IOException {
        Path file = folder.resolve("b.jpg");
        byte[] whole = Files.readAllBytes(good);
        Files.write(file, Arrays.copyOf(whole, whole.length * 2 / 3));
        leftOut(file, "cut off");
    }

    @Test
    void aPngThatEndsTooEarly() throws IOException {
        Path whole = folder.resolve("whole.png");
        TestPictures.write8(whole, TestPictures.random(3 * WIDTH * HEIGHT, 255, 2), WIDTH, HEIGHT);
        byte[] bytes = Files.readAllBytes(whole);
        Files.delete(whole);
        Path file = folder.resolve("b.png");
        Files.write(file, Arrays.copyOf(bytes, bytes.length * 2 / 3));
        leftOut(file, "damaged, cut off or of a rare kind");
    }

    /** What is no picture has no time either; the others keep theirs. */
    @Test
    void aFileCutInItsHeadDoesNotTakeTheTimesOfTheOthers() throws IOException {
        Files.delete(good);
        for (int k = 0; k < 3; k++) {
            int[] codes = TestPictures.random(3 * WIDTH * HEIGHT, 65535, k);
            LocalDateTime taken = LocalDateTime.of(2026, 5, 1, 21, 0, 3 * k);
            TestPictures.writeLinear(folder.resolve("f" + k + ".tif"), codes, WIDTH, HEIGHT, 1, taken);
        }
        TestPictures.write8(folder.resolve("x.jpg"), TestPictures.random(3 * WIDTH * HEIGHT, 255, 1), WIDTH, HEIGHT);
        Path cut = folder.resolve("x.jpg");
        Files.write(cut, Arrays.copyOf(Files.readAllBytes(cut), 60));
        StackResult result = stack();
        assertThat(result.frames()).isEqualTo(3);
        assertThat(result.skipped()).singleElement().satisfies(s -> assertThat(s.file())
                .isEqualTo(cut));
        assertThat(result.gaps()).contains(new StackResult.Gaps(2, 4, 2));
    }

    @Test
    void aFrameOfAnotherSize() throws IOException {
        Path file = folder.resolve("b.jpg");
        TestPictures.write8(file, TestPictures.random(3 * WIDTH * HEIGHT, 255, 2), 32, 48);
        StackResult result = stack();
        assertThat(result.frames()).isEqualTo(1);
        assertThat(result.skipped()).singleElement().satisfies(s -> {
            assertThat(s.file()).isEqualTo(file);
            assertThat(s.reason()).contains("32 × 48").contains("48 × 32");
        });
    }

    @Test
    void aFileThatMayNotBeRead() throws IOException {
        Path file = Files.copy(good, folder.resolve("b.jpg"));
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
        Assumptions.assumeFalse(Files.isReadable(file), "this user may read everything");
        leftOut(file, "permission denied");
    }

    @Test
    void aMissingFile() {
        Path missing = folder.resolve("nowhere.jpg");
        assertThatThrownBy(() -> Inputs.open(List.of(missing), 0, false))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(missing.toString())
                .hasMessageContaining("does not exist");
    }

    @Test
    void aRepeatedFrameCountsOnce() throws IOException {
        Files.copy(good, folder.resolve("b.jpg"));
        assertThat(stack().frames()).isEqualTo(1);
    }

    @Test
    void aTextFileNamedLikeAClip() throws IOException {
        Path file = folder.resolve("clip.mp4");
        Files.writeString(file, "this is no clip\n".repeat(500));
        assertThatThrownBy(() -> Inputs.open(List.of(file), 0, true))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(file.toString());
    }

    /** A list that names other files would make the reader open what nobody named. */
    @Test
    void aPlayListIsNoClip() throws IOException {
        Path file = folder.resolve("clip.mp4");
        Files.writeString(file, "ffconcat version 1.0\nfile '" + good + "'\n");
        assertThatThrownBy(() -> Inputs.open(List.of(file), 0, true)).isInstanceOf(UnreadableInputException.class);
    }

    @Test
    void anEmptyClip() throws IOException {
        Path file = Files.createFile(folder.resolve("clip.mp4"));
        assertThatThrownBy(() -> Inputs.open(List.of(file), 0, true))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("is empty");
    }
}
