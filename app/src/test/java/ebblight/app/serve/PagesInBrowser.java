package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests of pages that all look at one outing; none may leave a fault in the browser. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
abstract class PagesInBrowser {

    @TempDir
    static Path temporary;

    static OpenPages pages;
    static Browser browser;

    @AfterAll
    static void stop() {
        if (pages != null) {
            pages.close();
        }
    }

    @AfterEach
    void noFault() {
        assertThat(browser.faults()).isEmpty();
    }
}
