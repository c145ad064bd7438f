package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ctrl-C in a process of its own. */
@EnabledOnOs({OS.LINUX, OS.MAC})
class InterruptionTest {

    private static final int FRAMES = 48;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path shared;

    @BeforeAll
    static void writeFrames() throws Exception {
        for (int k = 0; k < FRAMES; k++) {
            TestFrames.write(shared, k, 1800, 1200);
        }
    }

    /** Each command while it reads, and measure and preview again in the middle of their thinking. */
    @ParameterizedTest
    @CsvSource({
        "reading frames, stack, -o, o.tif, --as, mean",
        "reading frames, stack, -o, o.tif, --as, median",
        "reading frames, measure, --regions-out, o.png, --fps, 10",
        "telling the parts, measure, --picture, o.png, --fps, 10",
        "reading frames, preview, -o, o.tif, --time, 60s",
        "telling the parts, preview, -o, o.tif, --time, 60s"
    })
    void leavesTheOldFileAndNothingElse(
            String when, String command, String option, String name, String other, String value) throws Exception {
        Path out = Files.createDirectory(folder.resolve("out"));
        Path spill = Files.createDirectory(folder.resolve("spill"));
        Path before = Files.writeString(out.resolve(name), "the result of the day before");
        List<String> line = new ArrayList<>();
        if (OS.current() == OS.LINUX) {
            // Whoever starts the tests in the background has Ctrl-C ignored, and the child would inherit that.
            line.addAll(List.of("env", "--default-signal=INT"));
        }
        line.addAll(Child.line(
                List.of("-Djava.io.tmpdir=" + spill),
                List.of(command, shared.toString(), option, before.toString(), other, value)));
        Process process = new ProcessBuilder(line)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile())
                .start();
        untilSaid(process, when);
        assertThat(process.isAlive())
                .as("still at work when it was stopped; it said " + Files.readString(folder.resolve("said")))
                .isTrue();
        assertThat(new ProcessBuilder("kill", "-INT", Long.toString(process.pid()))
                        .start()
                        .waitFor())
                .isZero();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isEqualTo(130);
        assertThat(names(out)).containsExactly(name);
        assertThat(before).hasContent("the result of the day before");
        assertThat(Files.readString(folder.resolve("said"))).contains("stopped").doesNotContain("our fault");
        // native libraries are unpacked elsewhere; what the program itself spills is gone
        assertThat(names(spill)).noneMatch(n -> n.contains("ebblight") || n.endsWith(".part"));
    }

    private void untilSaid(Process process, String word) throws Exception {
        for (int k = 0; k < 600 && process.isAlive(); k++) {
            if (Files.readString(folder.resolve("said")).contains(word)) {
                return;
            }
            Thread.sleep(20);
        }
    }

    private static List<String> names(Path folder) throws Exception {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(f -> f.getFileName().toString())
                    .toList();
        }
    }
}
