package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** The arithmetic of the pages, run without a browser. */
class LogicTest {

    private static boolean nodeRuns() throws InterruptedException {
        try {
            return new ProcessBuilder("node", "--version")
                            .redirectErrorStream(true)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void passesItsOwnTests() throws Exception {
        assumeTrue(nodeRuns(), "no node here (Debian: nodejs)");
        Path tests = Path.of(System.getProperty("ebblight.root"), "app/src/test/js/logic.test.mjs");
        Process node = new ProcessBuilder("node", "--test", tests.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(node.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(node.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(node.exitValue()).as(told).isZero();
        assertThat(told).containsPattern("# pass [1-9]");
    }
}
