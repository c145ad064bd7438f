package ebblight.app.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class OutingFolderTest {

    @TempDir
    Path temporary;

    private OutingFolder folder;

    @BeforeEach
    void prepare() throws IOException {
        Path root = Files.createDirectories(temporary.resolve("outing"));
        Files.writeString(temporary.resolve("secret.jpg"), "no picture of this outing");
        Files.writeString(root.resolve("clip.mp4"), "x");
        Files.createDirectories(root.resolve("burst"));
        Files.writeString(root.resolve("burst/1.jpg"), "x");
        Files.writeString(root.resolve("burst/2.jpg"), "x");
        Files.createDirectories(root.resolve("made"));
        Files.writeString(root.resolve("made/1.jpg"), "x");
        Files.writeString(root.resolve("made/2.jpg"), "x");
        folder = OutingFolder.open(root);
    }

    @Test
    void listsClipsAndFoldersOfFramesButNotWhatItMadeItself() throws IOException {
        assertThat(folder.inputs()).extracting(OutingFolder.Input::path).containsExactlyInAnyOrder("clip.mp4", "burst");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../secret.jpg",
                "burst/../../secret.jpg",
                "/etc/passwd",
                "burst/\0.jpg",
                "",
                "..\\secret.jpg",
                "%2e%2e/secret.jpg",
                "nowhere.jpg"
            })
    void everyWayOutIsAFileThatIsNotThere(String path) {
        assertThatThrownBy(() -> folder.inside(path)).isInstanceOf(FileNotFoundException.class);
    }

    @Test
    void aLinkThatLeadsOutIsNotFollowed() throws IOException {
        Files.createSymbolicLink(folder.root().resolve("link.jpg"), temporary.resolve("secret.jpg"));
        Files.createSymbolicLink(folder.root().resolve("up"), temporary);
        assertThatThrownBy(() -> folder.inside("link.jpg")).isInstanceOf(FileNotFoundException.class);
        assertThatThrownBy(() -> folder.inside("up/secret.jpg")).isInstanceOf(FileNotFoundException.class);
        assertThat(folder.inputs()).extracting(OutingFolder.Input::path).doesNotContain("up");
    }
}
