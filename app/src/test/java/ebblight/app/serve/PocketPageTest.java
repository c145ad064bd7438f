package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.plan.StationCatalogue;
import ebblight.app.plan.WishesFile;
import ebblight.app.pocket.BuiltPage;
import ebblight.app.pocket.PocketFolder;
import ebblight.app.pocket.PocketOuting;
import ebblight.app.pocket.PocketPage;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.engine.StationFields;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The phone page as a file, without a network: it opens, it is small, and its engine says what this one says. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketPageTest {

    /** What may be sent over a weak network, in bytes. */
    private static final int MOST_BYTES = 500_000;

    /** Room for what the page and a long outing will yet hold, in bytes. */
    private static final int RESERVE = 15_000;

    @TempDir
    static Path temporary;

    private static Browser browser;

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        BuiltPage.assume();
        JsonObject outing = Asked.parse(
                """
                {"schema":"outing/1","revision":1,"name":"Test shore","zone":"Europe/Paris",
                 "place":{"name":"Wall","at":"48.65,-2.03","station":"nearest"},
                 "plan":{"from":"2027-01-01","to":"2027-01-08","guard":{"feetMetres":7.5}},
                 "views":[{"id":"view-1","name":"Shore","hour":{"sunAltitude":[-6,5],"tideDirection":"falling"}}],
                 "log":[]}""");
        JsonObject packed = PocketOuting.of(outing, new JsonObject(), temporary);
        byte[] page = PocketPage.html(packed, false);
        assertThat(page.length).isLessThanOrEqualTo(MOST_BYTES - RESERVE);
        Files.write(temporary.resolve("wasm.html"), page);
        PocketFolder.write(packed, temporary.resolve("site"));
        PhonePage.older(temporary);
        browser = new Browser();
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver()
                .executeCdpCommand(
                        "Network.emulateNetworkConditions",
                        Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
        browser.driver().manage().timeouts().scriptTimeout(Duration.ofMinutes(5));
        browser.size(390, 844);
    }

    @AfterAll
    static void end() {
        if (browser != null) {
            browser.close();
        }
    }

    private static void open(String name, String place) {
        browser.driver().get(temporary.resolve(name).toUri() + place);
        browser.find("main h1, main h2");
    }

    @Test
    void theWindowsAreFoundOnThePhone() {
        open("wasm.html", "#before");
        browser.until("document.querySelector('main dl.now')");
        assertThat(browser.text()).contains("Windows", "Sun now", "Water now", "turn your back on the sea");
        assertThat(browser.run("return performance.getEntriesByType('resource').map(e => e.name)"
                        + ".filter(n => !/^(blob|data|file):/.test(n)).length"))
                .isEqualTo(0L);
        assertThat(browser.faults()).isEmpty();
    }

    @Test
    void anotherPageOfTheSameOutingKeepsWhatWasWritten() {
        open("wasm.html", "#after");
        assertThat(browser.text()).contains("Bring it home", "The log is empty");
        Object written = browser.driver()
                .executeAsyncScript(
                        """
                        const done = arguments[arguments.length - 1];
                        import('ebblight/pocket/carrier.js').then(async ({ json }) => {
                          const { outing } = await json('/api/outing');
                          outing.log = [{ frame: 1, openedAt: '2027-01-02T08:30:00Z', openSeconds: 30 }];
                          await json('/api/outing', { method: 'PUT', body: JSON.stringify(outing) });
                          const again = await json('/api/outing', { method: 'PUT', body: JSON.stringify(outing) }).catch((e) => e.status);
                          done(again);
                        });""");
        assertThat(written).as("a page that comes with an older revision").isEqualTo(409L);
        browser.driver().navigate().refresh();
        browser.until("document.body.innerText.includes('1 frame is in the log')");
    }

    /** Kernels, ephemeris, tide and texts: every answer the same on the phone and here, numbers to the last bit. */
    @ParameterizedTest
    @ValueSource(strings = {"wasm", "script"})
    void thePhonesEngineSaysWhatThisOneSays(String way) throws IOException {
        open(way + ".html", "#after");
        List<JsonObject> requests = requests();
        assertThat(requests).hasSizeGreaterThanOrEqualTo(200);
        JsonArray all = new JsonArray();
        all.addAll(requests);
        Object answers = browser.driver()
                .executeAsyncScript(
                        """
                        const done = arguments[arguments.length - 1];
                        import('ebblight/pocket/reason.js').then(async ({ answer, way }) => {
                          const all = [];
                          for (const request of JSON.parse(arguments[0])) {
                            all.push(await answer(request).catch((e) => ({ problem: e.message })));
                          }
                          done(JSON.stringify({ way: way(), all }));
                        });""",
                        JsonWriter.string(all));
        JsonObject said = Asked.parse(String.valueOf(answers));
        assertThat(said.getString("way")).isEqualTo(way);
        Engine engine = new Engine();
        for (int i = 0; i < requests.size(); i++) {
            same(here(engine, requests.get(i)), said.getArray("all").get(i), requests.get(i) + " ");
        }
    }

    private static JsonObject here(Engine engine, JsonObject request) {
        try {
            return Asked.parse(
                    engine.answer(JsonWriter.string(request), new Blobs(), ebblight.core.numeric.Work.alone()));
        } catch (RequestException e) {
            JsonObject problem = new JsonObject();
            problem.put("problem", e.getMessage());
            return problem;
        }
    }

    static void same(Object here, Object there, String where) {
        if (here instanceof JsonObject one && there instanceof JsonObject other) {
            assertThat(other.keySet()).as(where).isEqualTo(one.keySet());
            one.forEach((name, value) -> same(value, other.get(name), where + "." + name));
        } else if (here instanceof JsonArray one && there instanceof JsonArray other) {
            assertThat(other.size()).as(where).isEqualTo(one.size());
            for (int i = 0; i < one.size(); i++) {
                same(one.get(i), other.get(i), where + "[" + i + "]");
            }
        } else if (here instanceof Number one && there instanceof Number other) {
            assertThat(Double.doubleToLongBits(other.doubleValue()))
                    .as("%s: %s here, %s there", where, one, other)
                    .isEqualTo(Double.doubleToLongBits(one.doubleValue()));
        } else {
            assertThat(there).as(where).isEqualTo(here);
        }
    }

    private static List<JsonObject> requests() throws IOException {
        SplittableRandom dice = new SplittableRandom(11);
        List<JsonObject> all = new ArrayList<>();
        String[] bags = {"'6'", "'6','10'", "'3','6','10','16'", "'pol','6'", "'nd1000'", "'grad2','3.0d'"};
        for (int i = 0; i < 80; i++) {
            all.add(request(String.format(
                    Locale.ROOT,
                    "{'schema':'settings/1','meter':'f/%s 1/%d ISO%d','time':'%ds','filters':[%s],"
                            + "'fadingStopsPerMinute':%.3f,'biasStops':%.2f}",
                    new String[] {"4", "5.6", "8", "11", "16"}[i % 5],
                    1 << dice.nextInt(10),
                    100 << dice.nextInt(4),
                    1 + dice.nextInt(300),
                    bags[i % bags.length],
                    dice.nextDouble(-0.5, 0.5),
                    dice.nextDouble(-1, 1))));
        }
        for (int i = 0; i < 80; i++) {
            all.add(request(String.format(
                    Locale.ROOT,
                    "{'schema':'sky/1','at':'%.3f,%.3f','time':'%s'}",
                    dice.nextDouble(-89, 89),
                    dice.nextDouble(-180, 180),
                    Instant.ofEpochSecond(1_500_000_000L + dice.nextInt(500_000_000)))));
        }
        List<StationCatalogue.Entry> stations = StationCatalogue.read().search("a");
        for (int i = 0; i < 30; i++) {
            JsonObject tide = request("{'schema':'tide/1','everySeconds':3600}");
            Instant from = Instant.ofEpochSecond(1_800_000_000L + 86_400L * dice.nextInt(400));
            tide.put(
                    "station",
                    StationFields.write(
                            stations.get(dice.nextInt(stations.size())).station()));
            tide.put("from", from.toString());
            tide.put("to", from.plus(Duration.ofHours(30)).toString());
            all.add(tide);
        }
        for (int month = 1; month <= 6; month++) {
            all.add(WishesFile.request(
                    request(
                            "{'schema':'wishes/1','at':'48.65,-2.03','zone':'Europe/Paris','station':'nearest','from':'2027-0"
                                    + month + "-01','to':'2027-0" + month
                                    + "-06','sunAltitude':[-6,8],'tideDirection':'falling','minMinutes':15,"
                                    + "'guard':{'feetMetres':7.5},'exposure':{'time':'2m'}}"),
                    temporary));
        }
        for (int i = 0; i < 8; i++) {
            all.add(request("{'schema':'guess/1','windMetresPerSecond':" + (2 + 2 * i) + "}"));
        }
        all.add(request("{'schema':'settings/1','meter':'f/11','time':'2s','filters':['6']}"));
        all.add(request("{'schema':'sky/1','at':'95,0','time':'2027-01-01T00:00Z'}"));
        return all;
    }

    private static JsonObject request(String quoted) {
        return Asked.parse(quoted.replace('\'', '"'));
    }
}
