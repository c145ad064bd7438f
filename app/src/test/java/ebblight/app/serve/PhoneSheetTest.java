package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.kit.KitStore;
import ebblight.app.pocket.BuiltPage;
import ebblight.app.pocket.PocketCode;
import ebblight.app.pocket.PocketOuting;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;

/** From desk to phone and back: the door in the house's network, an outing as a code, the log. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PhoneSheetTest {

    @TempDir
    Path temporary;

    private JsonObject packed() throws Exception {
        return PocketOuting.of(
                Asked.parse(PhonePage.OUTING), new KitStore(temporary.resolve("data")).read(), temporary);
    }

    private static void assumePage() {
        BuiltPage.assume();
    }

    private static HttpResponse<String> get(String address) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(address)).build(),
                        HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    /** A clock that is put forward by hand. */
    private static final class Hands extends Clock {
        private Instant now = Instant.parse("2027-01-14T12:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @Test
    void theDoorIsShutUntilAskedForKnowsItsTokenAndShutsByItself() throws Exception {
        assumePage();
        Hands clock = new Hands();
        try (HandOver door = new HandOver(clock)) {
            assertThat(door.link()).isEmpty();
            String link = door.open(InetAddress.getLoopbackAddress(), packed());
            assertThat(get(link).body()).contains("Save the page", "plain http", "iOS");
            assertThat(get(link + "ebblight-pocket.html").body()).contains("part-wasm", "part-script");
            assertThat(Asked.parse(get(link + "outing.pocket.json").body()).getString("schema"))
                    .isEqualTo("pocket-outing/1");
            URI at = URI.create(link);
            String root = "http://" + at.getHost() + ":" + at.getPort() + "/";
            assertThat(get(root).statusCode()).isEqualTo(404);
            assertThat(get(root + "0".repeat(48) + "/outing.pocket.json").statusCode())
                    .isEqualTo(404);
            assertThat(get(link + "outing.json").statusCode()).isEqualTo(404);
            assertThat(get(link.replace("127.0.0.1", "localhost")).statusCode())
                    .as("a name that another site may point here")
                    .isEqualTo(404);
            clock.now = clock.now.plus(Duration.ofMinutes(16));
            assertThat(get(link).statusCode()).isEqualTo(404);
            assertThat(door.link()).isEmpty();
            assertThatThrownBy(() -> get(link)).isInstanceOf(java.net.ConnectException.class);
        }
    }

    @Test
    void aCodeGoesToHttpsAloneAndALargeOutingIsToldToBeTooLarge() throws Exception {
        assertThatThrownBy(() -> PocketCode.address("http://example.org/site/", packed()))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("https");
        assertThat(PocketCode.address("https://example.org/site/", packed()).length())
                .isLessThanOrEqualTo(PocketCode.MOST_SIGNS);
        JsonObject large = packed();
        JsonArray rows = new JsonArray();
        for (int i = 0; i < 400; i++) {
            rows.add("2027-01-01T" + i + ", " + Math.sin(i));
        }
        large.put("table", rows);
        assertThat(PocketCode.address("https://example.org/site/", large).length())
                .isGreaterThan(PocketCode.MOST_SIGNS);
    }

    /** The text of the code on a screen, as a phone reads it: it looks until it can, at several distances. */
    private static String onScreen(Browser screen) throws Exception {
        ReaderException unread = null;
        for (int look = 0; look < 12; look++) {
            BufferedImage picture = ImageIO.read(
                    new ByteArrayInputStream(screen.find(".code svg").getScreenshotAs(OutputType.BYTES)));
            int scale = 1 + look % 3;
            int w = scale * picture.getWidth();
            int h = scale * picture.getHeight();
            BufferedImage near = new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB);
            Graphics2D pen = near.createGraphics();
            pen.drawImage(picture, 0, 0, w, h, null);
            pen.dispose();
            int[] pixels = near.getRGB(0, 0, w, h, null, 0, w);
            try {
                return new QRCodeReader()
                        .decode(
                                new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(w, h, pixels))),
                                Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE))
                        .getText();
            } catch (ReaderException e) {
                unread = e;
            }
        }
        throw new AssertionError("no code can be read on the screen", unread);
    }

    @Test
    void theCodeOnTheScreenOpensInTheInstalledPageAndTheLogComesHome() throws Exception {
        OpenPages.assumeBrowser();
        assumePage();
        Path root = Files.createDirectories(temporary.resolve("outing"));
        Files.writeString(
                root.resolve("outing.json"),
                PhonePage.OUTING.replace("Test shore", "Other shore").replace("\"Shore\"", "\"Ledge\""));
        try (OpenPages desk = OpenPages.on(root, temporary);
                PhonePage phone = PhonePage.of(temporary)) {
            com.sun.net.httpserver.HttpServer host = PocketSiteTest.host(temporary.resolve("site"), 0, "");
            int port = host.getAddress().getPort();
            phone.browser().driver().get(PocketSiteTest.at(port, ""));
            phone.wait("navigator.serviceWorker.ready.then(() => done(true));");
            host.stop(0);

            desk.browser().driver().get(desk.server().link().toString());
            desk.browser().driver().get(desk.server().link().resolve("/#after").toString());
            desk.browser().press("The phone’s log");
            desk.browser().type("input[type=url]", PocketSiteTest.at(port, ""));
            desk.browser().press("Show the outing as a code");
            String address = onScreen(desk.browser());

            phone.browser().driver().get("about:blank");
            phone.browser().driver().get(address);
            phone.browser().until("document.body.innerText.includes('Ledge')");
            phone.browser().driver().get("about:blank");
            phone.browser().driver().get(PocketSiteTest.at(port, "#there/view-1/shot/8?time=1s"));
            phone.browser().press("Count me in");
            phone.browser().press("I closed it now");
            phone.browser().press("Log, pack");
            phone.browser().until("!Object.keys(localStorage).some(k => k.startsWith('ebblight-unsaved'))");
            String log = String.valueOf(phone.wait("import('ebblight/pocket/carrier.js').then(({ json }) =>"
                    + " json('/api/outing')).then(({ outing }) => done(JSON.stringify(outing)));"));

            Path file = temporary.resolve("outing-from-phone.json");
            Files.writeString(file, log);
            for (int times = 0; times < 2; times++) {
                desk.browser().type("input[aria-label='Log of the phone']", file.toString());
                desk.browser().until("document.body.innerText.includes('" + (1 - times) + " new, 1 in the log')");
            }
            assertThat(desk.outing().getArray("log")).hasSize(1);
            Files.writeString(file, JsonWriter.string(packed()));
            desk.browser().type("input[aria-label='Log of the phone']", file.toString());
            desk.browser().until("document.body.innerText.includes('is no log of the phone page')");
        }
    }

    @Test
    void thePageIsHandedOverByAKeyAndTheCodeOnTheScreenLeadsThePhoneToIt() throws Exception {
        OpenPages.assumeBrowser();
        assumePage();
        System.setProperty(HandOver.TOLD, "127.0.0.1");
        Path root = Files.createDirectories(temporary.resolve("outing"));
        Files.writeString(root.resolve("outing.json"), PhonePage.OUTING);
        try (OpenPages desk = OpenPages.on(root, temporary);
                PhonePage phone = PhonePage.of(temporary)) {
            Browser screen = desk.browser();
            screen.driver().get(desk.server().link().toString());
            screen.driver().get(desk.server().link().resolve("/#after").toString());
            screen.press("The phone’s log");
            screen.until("document.body.innerText.includes('Off. Opened, this machine hands the page')");
            screen.press("Hand the page over");
            String link = onScreen(screen);
            assertThat(screen.text()).contains(link, "a quarter of an hour", "plain http");

            phone.browser().driver().get(link);
            phone.browser().until("document.body.innerText.includes('Save the page')");
            phone.browser().driver().get(link + "ebblight-pocket.html#there/view-1");
            phone.browser().until("document.querySelector('main h1, main h2')");
            assertThat(phone.browser().text()).contains("Shore");

            URI at = URI.create(link);
            String token = at.getPath().replace("/", "");
            String other = (token.charAt(0) == 'a' ? 'b' : 'a') + token.substring(1);
            assertThat(get(link.replace(token, other)).statusCode()).isEqualTo(404);
            assertThat(get(link.replace(token + "/", "")).statusCode()).isEqualTo(404);
            assertThat(get(link.replace(token, desk.server().link().getQuery().replaceAll(".*=", "")))
                            .statusCode())
                    .as("the token of the desk's own pages")
                    .isEqualTo(404);
            assertThat(get(link + "api/outing").statusCode()).isEqualTo(404);

            screen.press("Close it");
            screen.until("document.body.innerText.includes('Off. Opened, this machine hands the page')");
            assertThatThrownBy(() -> get(link)).isInstanceOf(java.net.ConnectException.class);
            screen.press("Hand the page over");
            screen.until("document.querySelector('.code svg')");
            assertThat(onScreen(screen)).as("another door, another token").doesNotContain(token);
        } finally {
            System.clearProperty(HandOver.TOLD);
        }
    }
}
