package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Ctrl-C in a process of its own. */
@EnabledOnOs({OS.LINUX, OS.MAC})
class InterruptionTest {

    private static final int FRAMES = 48;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void leavesNothingBehindAndEndsWith130() throws Exception {
        Path burst = Files.createDirectory(folder.resolve("burst"));
        for (int k = 0; k < FRAMES; k++) {
            TestFrames.write(burst, k, 1800, 1200);
        }
        Path out = Files.createDirectory(folder.resolve("out"));
        Path spill = Files.createDirectory(folder.resolve("spill"));
        for (String as : List.of("mean", "median")) {
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Djava.io.tmpdir=" + spill,
                            "-cp",
                            System.getProperty("java.class.path"),
                            Main.class.getName(),
                            "stack",
                            burst.toString(),
                            "-o",
                            out.resolve("o.tif").toString(),
                            "--as",
                            as)
                    .redirectErrorStream(true)
                    .redirectOutput(new File(folder.toFile(), "said"))
                    .start();
            untilSaid(process, "reading frames");
            assertThat(process.isAlive())
                    .as("still at work when it was stopped")
                    .isTrue();
            assertThat(new ProcessBuilder("kill", "-INT", Long.toString(process.pid()))
                            .start()
                            .waitFor())
                    .isZero();
            assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).isEqualTo(130);
            assertThat(names(out)).isEmpty();
            // native libraries are unpacked elsewhere; what the program itself spills is gone
            assertThat(names(spill)).noneMatch(name -> name.contains("ebblight") || name.endsWith(".part"));
        }
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
