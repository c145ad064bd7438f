package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.kit.KitStore;
import ebblight.app.pocket.BuiltPage;
import ebblight.app.pocket.PocketFolder;
import ebblight.app.pocket.PocketOuting;
import ebblight.app.pocket.PocketPage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;

/**
 * The phone page of an invented outing, as a file in a folder, and a browser of a phone's size to open it in.
 *
 * @param folder holds {@code wasm.html} and {@code site}
 */
@SuppressWarnings("NullAway") // the browser fills in what is read
record PhonePage(Path folder, Browser browser) implements AutoCloseable {

    static final String OUTING =
            """
            {"schema":"outing/1","revision":1,"name":"Test shore","zone":"Europe/Paris",
             "place":{"name":"Wall","at":"48.65,-2.03","station":"nearest"},
             "plan":{"from":"2027-01-01","to":"2027-01-08","guard":{"feetMetres":7.5}},
             "views":[{"id":"view-1","name":"Shore","hour":{"sunAltitude":[-6,5],"tideDirection":"falling"}}],
             "log":[]}""";

    /** Packs an outing and opens a browser; skips the test where either cannot be. */
    static PhonePage of(Path folder, JsonObject outing, String... switches) throws IOException {
        OpenPages.assumeBrowser();
        BuiltPage.assume();
        JsonObject packed = PocketOuting.of(outing, new KitStore(folder.resolve("data")).read(), folder);
        Files.write(folder.resolve("wasm.html"), PocketPage.html(packed, false));
        PocketFolder.write(packed, folder.resolve("site"));
        Browser browser = new Browser(switches).byTouch(true);
        browser.driver().manage().timeouts().scriptTimeout(Duration.ofMinutes(5));
        browser.size(390, 844);
        return new PhonePage(folder, browser);
    }

    static PhonePage of(Path folder) throws IOException {
        return of(folder, Asked.parse(OUTING));
    }

    /** Writes {@code script.html}: the page of the folder as an older phone sees it, without the WebAssembly. */
    PhonePage older() throws IOException {
        older(folder);
        return this;
    }

    static void older(Path folder) throws IOException {
        String site = Files.readString(folder.resolve("site/index.html"), StandardCharsets.UTF_8);
        // opened as a file it may not load what lies beside it on a host, and would say so whenever it gets there
        String alone = site.replaceAll("<link rel=\"(manifest|icon|apple-touch-icon)\"[^>]*>", "");
        Files.writeString(folder.resolve("script.html"), alone.replace("id=\"part-wasm\"", "id=\"part-none\""));
    }

    /** Takes the network away. */
    PhonePage offline() {
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver()
                .executeCdpCommand(
                        "Network.emulateNetworkConditions",
                        Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
        return this;
    }

    /** Opens the file at a place of the page, {@code #there/view-1}. */
    void open(String name, String place) {
        browser.driver().get("about:blank");
        browser.driver().get(folder.resolve(name).toUri() + place);
        browser.find("main h1, main h2");
    }

    void open(String place) {
        open("wasm.html", place);
    }

    /** Takes away all that the page keeps, as it is before it was ever opened; it must be open, on a place that keeps nothing. */
    void forget() {
        wait(
                """
                localStorage.clear();
                const request = indexedDB.open('ebblight-pocket');
                request.onsuccess = () => {
                  const clearing = request.result.transaction('kept', 'readwrite');
                  clearing.objectStore('kept').clear();
                  clearing.oncomplete = () => {
                    request.result.close();
                    done(null);
                  };
                };""");
    }

    /** What the last statement of an asynchronous script hands to {@code done}. */
    Object wait(String script, Object... arguments) {
        return browser.driver()
                .executeAsyncScript("const done = arguments[arguments.length - 1];\n" + script, arguments);
    }

    @Override
    public void close() {
        browser.close();
    }
}
