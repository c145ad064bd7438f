package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import com.sun.net.httpserver.HttpServer;
import ebblight.app.ask.Asked;
import ebblight.app.kit.KitStore;
import ebblight.app.pocket.PocketFolder;
import ebblight.app.pocket.PocketOuting;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The folder for a web host: it needs the host once, takes a newer page, and keeps the log through both. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketSiteTest {

    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "js", "text/javascript",
            "png", "image/png",
            "svg", "image/svg+xml",
            "webmanifest", "application/manifest+json");

    @TempDir
    Path temporary;

    /** A plain host of files; {@code policy} is sent with each of them. */
    static HttpServer host(Path folder, int port, String policy) throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
        server.createContext("/", exchange -> {
            String path = exchange.getRequestURI().getPath();
            Path file = folder.resolve(path.equals("/") ? "index.html" : path.substring(1));
            byte[] bytes = Files.isRegularFile(file) ? Files.readAllBytes(file) : new byte[0];
            String ending = file.toString().substring(file.toString().lastIndexOf('.') + 1);
            exchange.getResponseHeaders().set("Content-Type", TYPES.getOrDefault(ending, "text/plain"));
            exchange.getResponseHeaders().set("Cache-Control", "no-cache");
            if (!policy.isEmpty()) {
                exchange.getResponseHeaders().set("Content-Security-Policy", policy);
            }
            exchange.sendResponseHeaders(bytes.length > 0 ? 200 : 404, bytes.length > 0 ? bytes.length : -1);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
        server.start();
        return server;
    }

    static String at(int port, String place) {
        return "http://127.0.0.1:" + port + "/" + place;
    }

    private static void open(PhonePage page, String address) {
        page.browser().driver().get("about:blank");
        page.browser().driver().get(address);
        page.browser().find("main h1, main h2");
    }

    private static void expose(PhonePage page, int port) {
        open(page, at(port, "#there/view-1/shot/8?time=1s"));
        page.browser().press("Count me in");
        page.browser().press("I closed it now");
        page.browser().until("document.querySelector('.judge')");
        page.browser().until("!Object.keys(localStorage).some(k => k.startsWith('ebblight-unsaved'))");
    }

    @Test
    void theSecondVisitNeedsNoHostAndANewerPageKeepsTheLog() throws Exception {
        try (PhonePage page = PhonePage.of(temporary)) {
            Path site = temporary.resolve("site");
            HttpServer server = host(site, 0, "");
            int port = server.getAddress().getPort();
            open(page, at(port, ""));
            page.wait("navigator.serviceWorker.ready.then(() => done(true));");
            server.stop(0);

            expose(page, port);
            open(page, at(port, "#after"));
            assertThat(page.browser().text()).contains("1 frame is in the log");

            JsonObject later = Asked.parse(PhonePage.OUTING
                    .replace("\"revision\":1", "\"revision\":2")
                    .replace("\"name\":\"Shore\"", "\"name\":\"Shore from the steps\""));
            PocketFolder.write(PocketOuting.of(later, new KitStore(temporary.resolve("data")).read(), temporary), site);
            String version =
                    Files.readString(site.resolve("service.js")).replaceAll("(?s).*const KEPT = '([^']+)'.*", "$1");
            server = host(site, port, "");
            open(page, at(port, "#after"));
            page.browser().until("globalThis.ebblightNewer");
            server.stop(0);
            assertThat(page.wait("const look = () => caches.keys().then("
                            + "(names) => names.length === 1 ? done(names[0]) : setTimeout(look, 50));\nlook();"))
                    .as("the old page is put away")
                    .isEqualTo(version);
            open(page, at(port, "#before"));
            open(page, at(port, "#after"));
            assertThat(page.browser().text()).contains("1 frame is in the log");
            open(page, at(port, "#there/view-1"));
            assertThat(page.browser().text()).contains("Shore from the steps");
        }
    }

    @Test
    void aPageThatMayKeepNothingSaysSoAndOffersTheLog() throws Exception {
        try (PhonePage page = PhonePage.of(temporary)) {
            // a sandboxed page has no storage: a file manager's viewer gives none either
            HttpServer server = host(temporary, 0, "sandbox allow-scripts allow-downloads");
            open(page, at(server.getAddress().getPort(), "wasm.html#there/view-1/shot/8?time=1s"));
            assertThat(page.browser().text()).contains("keeps nothing once the tab is closed");
            page.browser().press("Count me in");
            page.browser().press("I closed it now");
            page.browser().press("Log, pack");
            page.browser().until("document.querySelectorAll('.log-rows li').length === 1");
            page.browser().press("Save or send the log");
            page.browser().key("Save or send the log");
            assertThat(page.browser().text()).contains("1 frame is in the log", "keeps nothing once the tab is closed");
            server.stop(0);
        }
    }
}
