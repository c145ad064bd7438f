package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.IntConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A result is there whole or not at all, and what stood there before stays until then. */
class OutputFileTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private List<Path> left() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.toList();
        }
    }

    private static void writePicture(Path target, Work work) throws IOException {
        CodedPicture picture = CodedPicture.srgb8(2, 1, new byte[6]);
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "test");
        TiffWriter.write(target, picture, facts, work);
    }

    @Test
    void whatFailsOnTheWayLeavesTheOldFileAlone() throws IOException {
        Path target = folder.resolve("out.tif");
        Files.writeString(target, "the old one");
        Work stoppedAtTheEnd = new Work() {
            @Override
            public boolean cancelled() {
                return true;
            }

            @Override
            public void progress(double fraction, String stage) {}

            @Override
            public void forEach(int n, IntConsumer body) {
                for (int i = 0; i < n; i++) {
                    body.accept(i);
                }
            }
        };
        assertThatThrownBy(() -> writePicture(target, stoppedAtTheEnd)).isInstanceOf(Work.Cancelled.class);
        assertThat(left()).containsExactly(target);
        assertThat(Files.readString(target)).isEqualTo("the old one");
    }

    @Test
    void theOldFileIsReplacedWhole() throws IOException {
        Path target = folder.resolve("out.bin");
        Files.writeString(target, "the old one, longer than the new one");
        OutputFile.write(target, "new".getBytes(StandardCharsets.UTF_8));
        assertThat(Files.readString(target)).isEqualTo("new");
        assertThat(left()).containsExactly(target);
    }

    @Test
    void aFolderThatIsNotThere() throws IOException {
        Path target = folder.resolve("nowhere/out.tif");
        assertThatThrownBy(() -> writePicture(target, Work.alone()))
                .isInstanceOf(IOException.class)
                .hasMessageContaining(target.toString())
                .hasMessageContaining("does not exist");
        assertThat(left()).isEmpty();
    }

    @Test
    void aFolderInPlaceOfTheFile() throws IOException {
        Path target = Files.createDirectory(folder.resolve("out.tif"));
        assertThatThrownBy(() -> writePicture(target, Work.alone()))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("is a folder");
        assertThat(left()).containsExactly(target);
    }

    @Test
    void aFolderThatMayNotBeWritten() throws IOException {
        Path locked = Files.createDirectory(folder.resolve("locked"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r-xr-xr-x"));
        Assumptions.assumeFalse(Files.isWritable(locked), "this user may write everywhere");
        Path target = locked.resolve("out.tif");
        assertThatThrownBy(() -> writePicture(target, Work.alone()))
                .isInstanceOf(IOException.class)
                .hasMessageContaining(target.toString())
                .hasMessageContaining("permission denied");
    }

    @Test
    void whatAKilledWriterLeftIsTakenAwayAndNothingElse() throws IOException {
        Path target = folder.resolve("out.tif");
        // Beyond the largest process number of the systems in use (Linux: 4194304, proc(5)).
        Path orphan = Files.writeString(folder.resolve(".out.tif.99999999999.part"), "half");
        Path fresh = Files.writeString(folder.resolve(".out.tif.99999999998.part"), "half, and just now");
        Path ours = Files.writeString(folder.resolve(".out.tif.mine.part"), "of somebody else");
        Path other = Files.writeString(folder.resolve(".other.tif.99999999999.part"), "half of another");
        FileTime yesterday = FileTime.from(Instant.now().minus(Duration.ofDays(1)));
        for (Path file : List.of(orphan, ours, other)) {
            Files.setLastModifiedTime(file, yesterday);
        }
        OutputFile.write(target, new byte[] {1});
        assertThat(left()).containsExactlyInAnyOrder(target, fresh, ours, other);
    }
}
