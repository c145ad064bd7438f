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
import org.openqa.selenium.interactions.Actions;

/**
 * The pages of an outing, served and open in a browser.
 *
 * @param root folder of the outing
 */
record OpenPages(LocalServer server, Browser browser, Path root) implements AutoCloseable {

    /** Serves the outing in {@code root}; skips the test where there is no browser. */
    static OpenPages on(Path root, Path temporary) throws IOException {
        LocalServer server = LocalServer.start(
                OutingFolder.open(root), temporary.resolve("data"), temporary.resolve("cache"), 0, Clock.systemUTC(), new TypedPictures());
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
