package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Errors of the file system as sentences that name the file once and say why. */
@SuppressWarnings("NullAway") // JUnit fills in the folder
class UnreadableInputExceptionTest {

    @TempDir
    Path folder;

    @Test
    void aNameAloneIsGivenItsReason() {
        assertThat(UnreadableInputException.sentence(new AccessDeniedException("coast")))
                .isEqualTo("coast: may not be read (permission denied)");
        assertThat(UnreadableInputException.sentence(new NotDirectoryException("coast")))
                .isEqualTo("coast: is no folder");
        assertThatThrownBy(() -> Files.readAllBytes(folder.resolve("none")))
                .isInstanceOfSatisfying(IOException.class, e -> assertThat(UnreadableInputException.sentence(e))
                        .isEqualTo(folder.resolve("none") + ": does not exist"));
    }

    /** As when a share of the network goes away: EIO of POSIX. */
    @Test
    void aReasonThatIsToldIsKeptAndTheFileNamedOnce() {
        IOException gone = new FileSystemException("share/one.jpg", null, "Input/output error");
        assertThat(UnreadableInputException.sentence(gone)).isEqualTo("share/one.jpg: Input/output error");
        assertThat(UnreadableInputException.reason(gone)).isEqualTo("could not be read: Input/output error");
    }

    @Test
    void whatIsNotThereIsSaid() {
        Path none = folder.resolve("none");
        assertThatThrownBy(() -> UnreadableInputException.unlessReadable(none))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessage(none + ": does not exist");
    }
}
