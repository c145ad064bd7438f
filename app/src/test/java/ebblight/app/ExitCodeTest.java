package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the process says when it is called in a way that cannot work. */
class ExitCodeTest {

    private static final String[] METER = {"settings", "--meter", "f/16 1/100 ISO100"};

    private static int settings(String... more) {
        String[] all = new String[METER.length + more.length];
        System.arraycopy(METER, 0, all, 0, METER.length);
        System.arraycopy(more, 0, all, METER.length, more.length);
        return EbblightCommand.run(all);
    }

    @Test
    void unreadableValuesAreWrongUsage() {
        assertThat(settings("--time", "-3s")).isEqualTo(2);
        assertThat(settings("--time", "2s", "--filters", "ten")).isEqualTo(2);
        assertThat(settings()).isEqualTo(2);
        assertThat(EbblightCommand.run("nonsense")).isEqualTo(2);
        assertThat(EbblightCommand.run("wish", "x.mp4", "--wish", "water=treacle"))
                .isEqualTo(2);
    }

    @Test
    void anUnreachableTimeHasNoAnswer() {
        assertThat(settings("--time", "4m")).isEqualTo(4);
    }

    @Test
    void unusableInputIsSaidSo(@TempDir Path folder) throws Exception {
        assertThat(EbblightCommand.run("measure", folder.resolve("missing.mp4").toString()))
                .isEqualTo(3);
        Path text = folder.resolve("text.jpg");
        Files.writeString(text, "no picture");
        String out = folder.resolve("out.tif").toString();
        assertThat(EbblightCommand.run("stack", text.toString(), "-o", out)).isEqualTo(3);
        assertThat(EbblightCommand.run("stack", folder.toString(), "-o", folder + "/nowhere/out.tif"))
                .isEqualTo(3);
        try (var left = Files.list(folder)) {
            assertThat(left).containsExactly(text);
        }
    }
}
