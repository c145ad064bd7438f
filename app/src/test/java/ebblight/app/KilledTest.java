package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.pocket.BuiltPage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Writers that are killed, as by a flat battery, at moments spread over their whole run: what was there is still there or
 * the new file is, whole, and the next run is not disturbed by what the killed one left.
 */
@EnabledOnOs({OS.LINUX, OS.MAC})
class KilledTest {

    /** For each command; sixteen with {@code -Pdamage}. */
    private static final int KILLS = Integer.getInteger("ebblight.kills", 1);

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path shared;

    @BeforeAll
    static void writeInputs() throws Exception {
        Writer.writeInputs(shared);
    }

    @ParameterizedTest
    @EnumSource
    void leavesTheOldFileOrTheNewOne(Writer writer) throws Exception {
        if (writer == Writer.PHONE) {
            BuiltPage.assume();
        }
        Path whole = prepared(writer, "whole");
        long began = System.nanoTime();
        Process undisturbed = start(writer, whole);
        assertThat(undisturbed.waitFor(120, TimeUnit.SECONDS)).isTrue();
        assertThat(undisturbed.exitValue())
                .as(Files.readString(folder.resolve("said")))
                .isZero();
        long millis = (System.nanoTime() - began) / 1_000_000;
        assertThat(whole.resolve(writer.file)).isNotEmptyFile();
        SplittableRandom dice = new SplittableRandom(writer.name().hashCode());
        for (int k = 0; k < KILLS; k++) {
            Path out = prepared(writer, "killed" + k);
            Map<Path, Long> before = Writer.sizes(out);
            Process process = start(writer, out);
            // The second half more often: there it writes.
            double moment = dice.nextBoolean() ? dice.nextDouble() : 0.5 + 0.6 * dice.nextDouble();
            boolean over = process.waitFor((long) (moment * millis), TimeUnit.MILLISECONDS);
            process.destroyForcibly().waitFor();
            String which = writer + " kill " + k + (over ? ", after its end" : "");
            // Every file in place is one that was there, as it was, or one that a whole run writes, whole.
            Map<Path, Long> after = Writer.sizes(out);
            assertThat(after.keySet()).as(which).containsAll(before.keySet());
            Map<Path, Long> expected = Writer.sizes(whole);
            for (Map.Entry<Path, Long> file : after.entrySet()) {
                if (file.getValue().equals(before.get(file.getKey()))) {
                    continue;
                }
                // A time in a record or a certificate may be some digits longer or shorter.
                double wanted = expected.getOrDefault(file.getKey(), -1000L);
                assertThat((double) file.getValue())
                        .as(which + " " + file.getKey())
                        .isBetween(0.95 * wanted - 16, 1.05 * wanted + 16);
            }
            Process again = start(writer, out);
            assertThat(again.waitFor(120, TimeUnit.SECONDS)).isTrue();
            assertThat(again.exitValue())
                    .as(which + ", then again: " + Files.readString(folder.resolve("said")))
                    .isZero();
            assertThat(Writer.sizes(out).keySet()).as(which).containsAll(expected.keySet());
        }
    }

    private Path prepared(Writer writer, String name) throws IOException {
        Path out = Files.createDirectory(folder.resolve(name));
        writer.prepare(shared, out);
        return out;
    }

    private Process start(Writer writer, Path out) throws IOException {
        return Child.start(folder.resolve("data"), folder.resolve("said"), writer.line(shared, out));
    }
}
