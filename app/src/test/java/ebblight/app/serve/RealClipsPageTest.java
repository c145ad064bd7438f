package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.grack.nanojson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** Clips of real water, cloud and leaves, walked from the opening of the folder to the log, by keys alone and by touch alone. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class RealClipsPageTest {

    private static final Path CLIPS =
            Path.of(System.getProperty("ebblight.shared", "../shared")).resolve("data/clips");
    private static final String READY =
            "document.querySelector('.axis-drawing') && !document.querySelector('.reading')";

    /** The keys of the steps before the exposure. */
    private static final List<String> STEPS = List.of(
            "Wishes are set",
            "Composed",
            "It stands",
            "Focus is locked",
            "The test frame is right",
            "ND is on",
            "Covered");

    @TempDir
    static Path temporary;

    private static OpenPages pages;
    private static Browser browser;

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        assumeTrue(Files.isDirectory(CLIPS), "the real clips are not on this machine: no " + CLIPS);
        Path root = Files.createDirectories(temporary.resolve("outing"));
        copy("waterfall/water.mp4", root.resolve("waterfall.mp4"));
        copy("foliage/tree.avi", root.resolve("foliage.avi"));
        copy("clouds", root.resolve("clouds"));
        copy("beach/every12s", root.resolve("beach"));
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
        browser.driver()
                .executeCdpCommand(
                        "Page.addScriptToEvaluateOnNewDocument",
                        Map.of("source", "localStorage.setItem('ebblight-tour', 'seen')"));
        browser.driver().get(pages.server().link().toString());
    }

    private static void copy(String from, Path to) throws IOException {
        Path source = CLIPS.resolve(from);
        if (!Files.isDirectory(source)) {
            Files.copy(source, to);
            return;
        }
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(source)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".jpg")).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    @AfterAll
    static void stop() {
        if (pages != null) {
            pages.close();
        }
    }

    @ParameterizedTest
    @CsvSource({"waterfall.mp4, Water, keys", "clouds, Cloud, touch", "foliage.avi, Branch, touch", "beach, Water, keys"
    })
    void fromTheClipToTheLog(String input, String part, String by) throws Exception {
        boolean touch = by.equals("touch");
        browser.byTouch(touch);
        browser.size(touch ? 390 : 1440, touch ? 844 : 900);
        Object id = browser.driver()
                .executeAsyncScript(
                        "const done = arguments[1]; fetch('/api/outing').then(r => r.json()).then(whole =>"
                                + " done(whole.outing.views.find(v => v.frames === arguments[0]).id));",
                        input);
        browser.run("location.hash = '#there/' + arguments[0]", id);
        browser.until(READY + " || document.body.innerText.includes('How far apart are these frames?')");
        if (browser.text().contains("How far apart are these frames?")) {
            press(touch, "Read them so");
        }
        browser.until(READY + " && document.querySelectorAll('.axis-drawing image').length > 2");
        assertThat(browser.text()).contains(part);

        press(touch, "Correct");
        stroke(touch);
        pages.saved();
        JsonObject view = view(input);
        assertThat(view.getArray("strokes")).hasSize(1);
        // what is measured anew draws the page anew: a finger that came down on the old key comes down again
        while (Boolean.TRUE.equals(browser.run("return document.querySelector('.tools') !== null"))) {
            press(touch, "Done");
        }
        browser.until(READY + " && !document.querySelector('.notes')?.innerText.includes('%')");

        press(touch, touch ? "a third of a stop longer" : "Meter");
        if (!touch) {
            press(false, "Set this reading");
        }
        browser.until("document.querySelector('.axis-drawing')");
        // the shot is kept for short times: the test waits the exposure out
        browser.run("location.hash = arguments[0]", "#there/" + view.getString("id") + "/shot/1?time=0.5s");
        int before = log();
        for (String step : STEPS) {
            press(touch, step);
            browser.until("!document.body.innerText.includes('" + step + "')");
        }
        press(touch, "Count me in");
        press(touch, "I closed it now");
        press(touch, "Log, pack");
        browser.until("document.querySelectorAll('.log-rows li').length === " + (before + 1));
        pages.saved();
        assertThat(log()).isEqualTo(before + 1);
        JsonObject entry = pages.outing().getArray("log").getObject(before);
        assertThat(entry.getString("view")).isEqualTo(view.getString("id"));
        assertThat(entry.getDouble("openSeconds")).isPositive();
        assertThat(browser.faults()).allMatch(f -> f.contains("400"));
    }

    private static int log() throws Exception {
        return pages.outing().getArray("log").size();
    }

    private static JsonObject view(String input) throws Exception {
        return pages.outing().getArray("views").stream()
                .map(JsonObject.class::cast)
                .filter(v -> input.equals(v.getString("frames")))
                .findFirst()
                .orElseThrow();
    }

    /** By the tab key and Enter, or by a finger. */
    private static void press(boolean touch, String text) {
        if (!touch) {
            browser.key(text);
            pages.tabTo(text);
            pages.press(Keys.ENTER);
            return;
        }
        browser.press(text);
    }

    private static void stroke(boolean touch) {
        if (!touch) {
            browser.type(
                    ".picture.drawing", Keys.ARROW_DOWN, Keys.SPACE, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.SPACE);
            return;
        }
        browser.finger().drag(browser.in(".picture.drawing", 0.3, 0.6), browser.in(".picture.drawing", 0.7, 0.6));
    }
}
