package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.Keys;

/** Planning a day in a real browser, from an empty folder to a window that There takes over. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class BeforePageTest extends PagesInBrowser {

    private static final String DRAWN = "document.querySelector('.strip svg') && document.querySelector('.weave svg')"
            + " && !document.querySelector('.searching')";

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        Path root = Files.createDirectories(temporary.resolve("outing"));
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
        browser.driver().get(pages.server().link().toString());
        browser.run("localStorage.setItem('ebblight-tour', 'seen'); location.hash = '#before'");
    }

    private static JsonObject outing() throws Exception {
        pages.saved();
        return pages.outing();
    }

    private static String value(String css, String attribute) {
        return browser.attribute(css, attribute);
    }

    @Test
    @Order(1)
    void anEmptyOutingAsksForThePlaceAndFindsAPort() {
        browser.until("document.body.innerText.includes('Where will you stand?')");
        browser.typeOver("[data-focus=place-zone]", "Europe/Paris");
        browser.type("[data-focus=place-search]", "saint malo");
        browser.press("Saint Malo");
        browser.until("document.querySelector('.place-water').innerText.includes('Water: Saint Malo')");
        assertThat(value("[data-focus=place-at]", "value")).startsWith("48.6");
        browser.press("Take this place");
        browser.until(DRAWN);
        assertThat(browser.text())
                .contains("window", "falling water first", "Not for navigation")
                .contains("Sun −6 to 5° high");
    }

    @Test
    @Order(2)
    void aPlaceThatDoesNotExistIsSaidAndNotTaken() throws Exception {
        browser.pressAt("[data-focus=place]");
        browser.typeOver("[data-focus=place-at]", "95,0");
        browser.press("Take this place");
        browser.until("[...document.querySelectorAll('.sheet .fault')].some(f => f.innerText.includes('95'))");
        browser.press("Close");
        assertThat(outing().getObject("place").getString("at")).startsWith("48.6");
        assertThat(browser.faults()).allMatch(f -> f.contains("400"));
    }

    @Test
    @Order(3)
    void aWishIsSetBySteppersAndSearchedAtOnce() throws Exception {
        browser.press("Another wish");
        browser.press("Height of the water");
        browser.press("to up");
        browser.until("document.querySelector('.wish-sentence').innerText === 'Water 0.5 to 2.1 m'");
        for (int i = 0; i < 30; i++) {
            browser.press("to up");
        }
        browser.until("document.querySelector('.wish-sentence').innerText === 'Water 0.5 to 5.1 m'");
        browser.press("Done");
        browser.until(DRAWN + " && document.body.innerText.includes('Water 0.5 to 5.1 m')");
        JsonObject hour = outing().getArray("views").getObject(0).getObject("hour");
        assertThat(hour.getArray("tideMetres").getDouble(1)).isEqualTo(5.1);
    }

    @Test
    @Order(4)
    void aBearingShowsTheSunsPathThroughTheLens() {
        browser.press("Set bearing and lens");
        browser.press("looks to down");
        browser.press("Done");
        browser.until(DRAWN + " && document.querySelector('.lens svg')");
        assertThat(browser.text()).contains("bearing 269°");
    }

    @Test
    @Order(5)
    void keysMoveTheCursorTheDayAndTheWindow() {
        browser.type(".strip", "");
        int at = Integer.parseInt(value(".strip", "aria-valuenow"));
        String told = value(".strip", "aria-valuetext");
        pages.press(Keys.ARROW_RIGHT);
        browser.until("document.querySelector('.strip').getAttribute('aria-valuenow') === '" + (at + 1) + "'");
        assertThat(value(".strip", "aria-valuetext")).isNotEqualTo(told).contains("Sun", "Water", "Light");
        String day = String.valueOf(browser.run("return document.querySelector('.day-title').innerText"));
        pages.press(Keys.PAGE_DOWN);
        browser.until("document.querySelector('.day-title').innerText !== '" + day.replace("\n", "\\n") + "'");
        browser.until("document.querySelector('.window.on')");
        pages.press(Keys.ARROW_DOWN);
        browser.until("!document.querySelector('.searching')");
    }

    @Test
    @Order(6)
    void aShutterTimeAndAWayBackJoinTheWindows() throws Exception {
        browser.press("Shutter time");
        browser.press("low clouds");
        browser.until(
                "(document.querySelector('.guess-said') || {innerText: ''}).innerText.includes('Cloud: sharp up to')");
        assertThat(browser.text()).contains("This is a guess");
        browser.press("Done");
        browser.press("Way back");
        for (int i = 0; i < 40; i++) {
            browser.press("lowest point up");
        }
        browser.press("Done");
        browser.until(DRAWN + " && document.querySelector('.window-key')");
        browser.pressAt(".window-key");
        browser.until("document.querySelector('.window.on .leave')");
        browser.until("document.querySelector('.window-more').innerText.includes('frames of 2 min fit')");
        assertThat(browser.text()).containsPattern("To pack\\s+Filters? ");
        browser.until(DRAWN);
        browser.press("I go then");
        JsonObject outing = outing();
        Instant start =
                Instant.parse(outing.getObject("plan").getObject("chosen").getString("start"));
        assertThat(start.atZone(ZoneOffset.UTC).getYear()).isGreaterThan(2020);
        assertThat(outing.getObject("guard").getString("leaveBy")).matches("\\d\\d:\\d\\d");
    }

    @Test
    @Order(7)
    void theSheetIsAPdf() {
        Object head = browser.driver()
                .executeAsyncScript("const done = arguments[arguments.length - 1]; const f = window.fetch;window.fetch"
                        + " = async (...a) => { const r = await f(...a); if"
                        + " (String(a[0]).includes('sheet')) r.clone().text().then(t => { window.fetch"
                        + " = f; done(t.slice(0, 5)); }); return r; };"
                        + "document.querySelector('[data-focus=sheet-pdf]').click()");
        assertThat(head).isEqualTo("%PDF-");
        browser.until("document.getElementById('notice').innerText.includes('one page')");
    }

    @Test
    @Order(8)
    void nothingIsWiderThanThePhoneAndTouchMovesTheCursor() {
        browser.size(390, 844);
        browser.until(DRAWN + " && document.querySelector('.strip svg').getAttribute('width') < 400");
        assertThat(((Number) browser.run("return document.documentElement.scrollWidth")).intValue())
                .isLessThanOrEqualTo(390);
        browser.run("document.querySelector('.strip').scrollIntoView({block: 'center'})");
        String before = value(".strip", "aria-valuenow");
        browser.run("const s = document.querySelector('.strip'); const b = s.getBoundingClientRect();"
                + "s.setPointerCapture = () => {};"
                + "s.dispatchEvent(new PointerEvent('pointerdown', {clientX: b.left + 120, clientY: b.top + 50,"
                + " pointerType: 'touch', pointerId: 1, button: 0, bubbles: true}))");
        assertThat(value(".strip", "aria-valuenow")).isNotEqualTo(before);
        browser.size(1440, 900);
    }

    @Test
    @Order(9)
    void namesRolesAndContrastHold() throws Exception {
        for (String light : List.of("room", "day", "night")) {
            for (int[] size : new int[][] {{1440, 900}, {390, 844}}) {
                browser.size(size[0], size[1]);
                browser.light(light);
                Thread.sleep(600);
                browser.until(DRAWN);
                assertThat(browser.violations()).as(light + " " + size[0]).isEmpty();
            }
        }
        browser.light("room");
        browser.size(1440, 900);
    }

    @Test
    @Order(10)
    void aTypedTableTakesThePlaceOfTheStation() throws Exception {
        browser.press("Table of waters");
        String rows = "time,heightMetres,kind\\n2027-01-10T03:00Z,5,high\\n2027-01-10T09:00Z,";
        browser.run("document.querySelector('[data-focus=rows-waters]').value = '" + rows + "6,high'");
        browser.press("Take these rows");
        browser.until("document.querySelector('.sheet .fault').innerText.includes('two high waters in a row')");
        assertThat(browser.faults()).allMatch(f -> f.contains("400"));
        browser.run("document.querySelector('[data-focus=rows-waters]').value = '" + rows + "1,low'");
        browser.press("Take these rows");
        browser.until("document.querySelector('.place-key').innerText.includes('water: typed table')");
        browser.until(DRAWN + " && document.body.innerText.includes('the water is not known')");
        assertThat(outing().getObject("plan").getArray("table").getArray(1).getDouble(1))
                .isEqualTo(1);
        browser.press("Table of waters: 2 rows");
        assertThat(value("[data-focus=rows-waters]", "value")).contains("2027-01-10T09:00Z,1,low");
        browser.press("Leave it out");
        browser.until(DRAWN + " && document.querySelector('.place-key').innerText.includes('Saint Malo')");
        browser.press("Forecast");
        browser.run("document.querySelector('[data-focus=rows-weather]').value ="
                + " 'time,cloudCover\\n2027-01-10T12:00Z,0.5\\n2027-01-10T18:00Z,0.8'");
        browser.press("Take these rows");
        browser.until(DRAWN + " && document.body.innerText.includes('Forecast: 2 rows')");
        assertThat(outing().getObject("plan").getArray("weather").getObject(0).getDouble("cloudCover"))
                .isEqualTo(0.5);
    }

    @Test
    @Order(11)
    void wishesThatNeverHoldSayWhich() {
        browser.press("Sun −6 to 5° high");
        for (int i = 0; i < 85; i++) {
            browser.press("to up");
        }
        for (int i = 0; i < 86; i++) {
            browser.press("from up");
        }
        browser.press("Done");
        browser.until("document.body.innerText.includes('No window')");
        assertThat(browser.text()).contains("Height of the sun fails at 100 % of the minutes");
    }
}
