package ebblight.app.serve;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.app.TypedPictures;
import ebblight.app.outing.OutingFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/**
 * The pages of an outing, served and open in a browser.
 *
 * @param root folder of the outing
 */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
record OpenPages(LocalServer server, Browser browser, Path root) implements AutoCloseable {

    /** Serves the outing in {@code root}; skips the test where there is no browser. */
    static OpenPages on(Path root, Path temporary) throws IOException {
        LocalServer server = LocalServer.start(
                OutingFolder.open(root),
                temporary.resolve("data"),
                temporary.resolve("cache"),
                0,
                Clock.systemUTC(),
                new TypedPictures());
        Browser browser = new Browser();
        browser.size(1440, 900);
        return new OpenPages(server, browser, root);
    }

    static void assumeBrowser() {
        assumeTrue(Browser.present(), "no /usr/bin/chromium with its driver (Debian: chromium, chromium-driver)");
    }

    void press(CharSequence... keys) {
        new Actions(browser.driver()).sendKeys(keys).perform();
    }

    /** Goes on by the tab key until the focus stands on the key wanted. */
    void tabTo(String text) {
        for (int i = 0; i < 120; i++) {
            Object on = browser.run("const e = document.activeElement; return (e.innerText || '').trim() + '|' +"
                    + " (e.getAttribute('aria-label') || '')");
            for (String name : String.valueOf(on).split("\\|", -1)) {
                if (name.replaceAll("\\s+", " ").startsWith(text)) {
                    return;
                }
            }
            press(Keys.TAB);
        }
        throw new AssertionError("the tab key never comes to " + text);
    }

    /** Goes to an address within the pages. */
    void open(String address) {
        browser.run("document.activeElement.blur(); location.hash = arguments[0]", address);
    }

    /** Goes on by the tab key to the key with this mark, and presses it. */
    void key(String focus) {
        browser.find("[data-focus=\"" + focus + "\"]");
        for (int i = 0; i < 200; i++) {
            if (focus.equals(browser.run("return document.activeElement.dataset.focus || ''"))) {
                press(Keys.ENTER);
                return;
            }
            press(Keys.TAB);
        }
        throw new AssertionError("the tab key never comes to " + focus);
    }

    /** Waits until every change is in the file. */
    void saved() {
        browser.until("!Object.keys(localStorage).some(k => k.startsWith('ebblight-unsaved'))");
    }

    /** The outing as it lies in its folder. */
    JsonObject outing() throws Exception {
        return JsonParser.object().from(Files.readString(root.resolve("outing.json")));
    }

    @Override
    public void close() {
        browser.close();
        server.close();
    }
}
