package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ebblight.app.pocket.BuiltPage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A disk on which nothing more fits or may be written: one sentence that says so, the old file as it was, and nothing half written. */
@EnabledOnOs(OS.LINUX)
class FullDiskTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path shared;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @SuppressWarnings("NullAway.Init") // set before each test
    private Path small;

    @BeforeAll
    static void writeInputs() throws Exception {
        Writer.writeInputs(shared);
    }

    @BeforeEach
    void mountASmallDisk() throws Exception {
        small = Files.createDirectory(folder.resolve("small"));
        Process mount = new ProcessBuilder("mount", "-t", "tmpfs", "-o", "size=2m", "none", small.toString())
                .redirectErrorStream(true)
                .start();
        assumeTrue(mount.waitFor() == 0, "no right to mount a small file system here");
    }

    @AfterEach
    void takeItAway() throws Exception {
        new ProcessBuilder("umount", small.toString()).start().waitFor();
    }

    @ParameterizedTest
    @EnumSource
    void losesNothingAndIsNamed(Writer writer) throws Exception {
        if (writer == Writer.PHONE) {
            BuiltPage.assume();
        }
        Path out = Files.createDirectory(small.resolve("out"));
        writer.prepare(shared, out);
        Map<Path, Long> before = Writer.sizes(out);
        fill(small.resolve("filler"));
        Said said = Said.by(writer.line(shared, out).toArray(String[]::new));
        assertThat(said.code()).as(said.err()).isEqualTo(3);
        assertThat(said.err()).contains("disk is full").doesNotContain("\tat ").doesNotContain("our fault");
        assertThat(Writer.sizes(out)).isEqualTo(before);
        try (var left = Files.walk(out)) {
            assertThat(left.filter(p -> p.toString().endsWith(".part"))).isEmpty();
        }
    }

    @ParameterizedTest
    @EnumSource
    void aDiskThatMayOnlyBeReadIsNamed(Writer writer) throws Exception {
        if (writer == Writer.PHONE) {
            BuiltPage.assume();
        }
        Path out = Files.createDirectory(small.resolve("out"));
        writer.prepare(shared, out);
        Map<Path, Long> before = Writer.sizes(out);
        Process remount = new ProcessBuilder("mount", "-o", "remount,ro", small.toString()).start();
        assumeTrue(remount.waitFor() == 0, "no right to mount here");
        Said said = Said.by(writer.line(shared, out).toArray(String[]::new));
        assertThat(said.code()).as(said.err()).isEqualTo(3);
        assertThat(said.err())
                .contains(out.toString())
                .containsAnyOf("another", "elsewhere")
                .doesNotContain("\tat ")
                .doesNotContain("our fault");
        assertThat(Writer.sizes(out)).isEqualTo(before);
    }

    /** Leaves room for not one byte. */
    private static void fill(Path filler) throws IOException {
        try (OutputStream out = Files.newOutputStream(filler)) {
            for (int size = 1 << 16; size > 0; size /= 2) {
                try {
                    while (true) {
                        out.write(new byte[size]);
                    }
                } catch (IOException e) {
                    // no more pieces of this size fit
                }
            }
        }
    }
}
