package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.core.exposure.ChangingLight;
import ebblight.core.exposure.ThirdStops;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.interactions.Actions;

/** The pages in a real browser: every path by keyboard, by touch, at three sizes and in three lights. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PagesTest extends PagesInBrowser {

    private static final String NASTY = "<img src=x onerror=alert(1)> & \"shore\"";
    private static final int[][] SIZES = {{1440, 900}, {1024, 768}, {390, 844}};
    private static final String READY =
            "document.querySelector('.axis-drawing') && !document.querySelector('.reading')";

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        Path root = TestOuting.write(Files.createDirectories(temporary.resolve("outing")), NASTY.replace("\"", "\\\""));
        copies(root.resolve("burst"), Files.createDirectories(root.resolve(NASTY)), 1);
        copies(root.resolve("burst"), Files.createDirectories(root.resolve("long")), 12);
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
    }

    /** The frames of a burst again and again, a minute later each time. */
    private static void copies(Path burst, Path to, int times) throws IOException {
        try (Stream<Path> frames = Files.list(burst)) {
            for (Path frame : frames.toList()) {
                for (int i = 0; i < times; i++) {
                    Files.copy(frame, to.resolve(frame.getFileName().toString().replace("_1715", "_17" + (15 + i))));
                }
            }
        }
    }

    @AfterEach
    void noFaultAndNoForeignRequest() {
        assertThat(browser.faults()).isEmpty();
        assertThat(
                        (List<?>)
                                browser.run(
                                        "return performance.getEntriesByType('resource').map(e => e.name)"
                                                + ".filter(n => !n.startsWith(location.origin) && !n.startsWith('blob:') && !n.startsWith('data:'))"))
                .isEmpty();
    }

    private static String axis(String attribute) {
        return browser.attribute(".axis-drawing", attribute);
    }

    private static void third(int wanted) {
        browser.until("document.querySelector('.axis-drawing').getAttribute('aria-valuenow') === '" + wanted + "'");
    }

    @Test
    @Order(1)
    void opensReloadsDuringTheReadingAndShowsTheAxis() {
        browser.driver().get(pages.server().link().toString());
        browser.until("document.querySelector('.progress') || document.querySelector('.axis-drawing')");
        browser.driver().navigate().refresh();
        browser.until(READY);
        browser.until("document.querySelectorAll('.axis-drawing image').length > 3");
        assertThat(browser.text()).contains("1 of 3").contains("Water");
        browser.press("No tour");
        assertThat(browser.text()).doesNotContain("1 of 3");
        browser.until("document.querySelector('.axis-drawing').parentElement.dataset.node !== ''");
    }

    @Test
    @Order(2)
    void keysMoveTheTimeAndTheAddressFollows() {
        browser.run("document.querySelector('.axis-drawing').focus()");
        int before = Integer.parseInt(axis("aria-valuenow"));
        pages.press(Keys.ARROW_LEFT);
        third(before - 1);
        pages.press(Keys.ARROW_UP);
        third(before + 2);
        String address = browser.driver().getCurrentUrl();
        assertThat(address).contains("time=");
        browser.driver().navigate().refresh();
        browser.until(READY);
        third(before + 2);
    }

    @Test
    @Order(3)
    void thePictureFollowsTheHandleWithinATenthOfASecond() {
        browser.until("document.querySelectorAll('.axis-drawing image').length > 3");
        browser.driver()
                .executeAsyncScript(
                        "const done = arguments[0]; performance.clearMeasures(); let i = 0; const next = () => {"
                                + " if (i === 40) { done(1); return; }"
                                + " document.querySelector('.axis-drawing').dispatchEvent(new KeyboardEvent('keydown',"
                                + " {key: i++ % 8 < 4 ? 'ArrowLeft' : 'ArrowRight', bubbles: true}));"
                                + " requestAnimationFrame(() => requestAnimationFrame(next)); }; next();");
        List<?> times = (List<?>) browser.run(
                "return performance.getEntriesByName('follow').map(e => e.duration)" + ".sort((a, b) => a - b)");
        assertThat(times).hasSize(40);
        System.out.printf(
                "the picture follows within %.1f ms (median), %.1f ms (slowest of 40) at 1280 px%n",
                ((Number) times.get(20)).doubleValue(), ((Number) times.get(39)).doubleValue());
    }

    @Test
    @Order(4)
    void aWishIsSetByKeyboardAndTakenBack() throws Exception {
        browser.run("document.querySelector('.axis-drawing').focus()");
        pages.tabTo("Water, wish");
        pages.press(Keys.ENTER);
        browser.find(".wish-field");
        pages.tabTo("lines");
        pages.press(Keys.ENTER);
        pages.saved();
        JsonObject wishes = pages.outing().getArray("views").getObject(0).getObject("wishes");
        assertThat(wishes.getString("flowing-1")).isEqualTo("lines");
        new Actions(browser.driver())
                .keyDown(Keys.CONTROL)
                .sendKeys("z")
                .keyUp(Keys.CONTROL)
                .perform();
        browser.until("document.getElementById('notice').textContent.includes('Taken back')");
        pages.saved();
        assertThat(pages.outing()
                        .getArray("views")
                        .getObject(0)
                        .getObject("wishes")
                        .getString("flowing-1", ""))
                .isNotEqualTo("lines");
    }

    @Test
    @Order(5)
    void aStrokeByKeyboardPartsThePictureAnew() throws Exception {
        browser.run("document.activeElement.blur()");
        pages.press("c");
        browser.find(".tools");
        browser.type(
                ".picture.drawing",
                Keys.ARROW_DOWN,
                Keys.ARROW_DOWN,
                Keys.SPACE,
                Keys.ARROW_RIGHT,
                Keys.ARROW_RIGHT,
                Keys.SPACE);
        pages.saved();
        JsonArray strokes = pages.outing().getArray("views").getObject(0).getArray("strokes");
        assertThat(strokes).hasSize(1);
        assertThat(strokes.getObject(0).getString("kind")).isEqualTo("flowing");
        assertThat(strokes.getObject(0).getArray("points").size()).isEqualTo(3);
        browser.press("Done");
        browser.until(READY);
        browser.until("!document.querySelector('.notes').innerText.includes('%')");
    }

    @Test
    @Order(6)
    void namesFromOutsideAreShownAsText() {
        assertThat(browser.text()).contains(NASTY);
        assertThat(browser.run("return document.querySelectorAll('img[src=\"x\"]').length"))
                .isEqualTo(0L);
        browser.run("location.hash = '#there/view-1/new'");
        browser.until("document.querySelector('.inputs')");
        assertThat(browser.textAt(".inputs")).contains(NASTY);
        assertThat(browser.run("return document.querySelectorAll('img[src=\"x\"]').length"))
                .isEqualTo(0L);
    }

    @Test
    @Order(7)
    void theWholeWayToTheLogByKeyboard() throws Exception {
        browser.run("location.hash = '#there/view-1?time=0.25s'");
        browser.until(READY);
        browser.run("document.querySelector('.axis-drawing').focus()");
        pages.tabTo("Take this to the shot");
        pages.press(Keys.ENTER);
        for (String done : List.of(
                "Wishes are set",
                "Composed",
                "It stands",
                "Focus is locked",
                "The test frame is right",
                "ND is on",
                "Covered")) {
            pages.tabTo(done);
            pages.press(Keys.ENTER);
            browser.until("!document.body.innerText.includes('" + done + "')");
        }
        pages.tabTo("Count me in");
        pages.press(Keys.ENTER);
        browser.until("document.body.innerText.includes('I closed it now')");
        pages.tabTo("gust");
        pages.press(Keys.ENTER);
        browser.driver().navigate().refresh();
        browser.until("document.body.innerText.includes('I closed it now')");
        pages.tabTo("I closed it now");
        pages.press(Keys.ENTER);
        browser.until("document.body.innerText.includes('Frame 1')");
        pages.tabTo("Smoother");
        pages.press(Keys.ENTER);
        pages.tabTo("drops");
        pages.press(Keys.ENTER);
        pages.tabTo("Log, pack");
        pages.press(Keys.ENTER);
        browser.until("document.querySelector('.log-rows li')");
        pages.saved();
        JsonObject entry = pages.outing().getArray("log").getObject(0);
        assertThat(entry.getInt("frame")).isEqualTo(1);
        assertThat(entry.getDouble("openSeconds")).isGreaterThan(0);
        assertThat(entry.getArray("marks").getObject(0).getString("what")).isEqualTo("gust");
        assertThat(entry.getArray("tags")).containsExactly("drops");
        assertThat(entry.getObject("why").getString("for")).isEqualTo("print");
        assertThat(entry.getObject("next").getInt("thirds")).isEqualTo(1);
    }

    @Test
    @Order(8)
    void twoTabsKeepBothChanges() throws Exception {
        browser.run("location.hash = '#there/view-1?time=1s'");
        browser.until(READY);
        String first = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(WindowType.TAB);
        browser.driver().get("http://127.0.0.1:" + pages.server().port() + "/#there/view-1?time=1s");
        browser.until(READY);
        browser.size(1440, 900);
        browser.press("Leave by");
        browser.press("water falls");
        pages.saved();
        browser.driver().close();
        browser.driver().switchTo().window(first);
        browser.press("Meter");
        browser.press("Brighter than metered up");
        browser.until("document.getElementById('notice').textContent.includes('both changes are kept')");
        pages.saved();
        assertThat(pages.outing().getObject("guard").getString("water")).isEqualTo("falling");
        assertThat(pages.outing().getObject("light").getDouble("biasStops")).isCloseTo(1.0 / 3, Offset.offset(1e-9));
        assertThat(browser.faults()).allMatch(f -> f.contains("409"));
    }

    @Test
    @Order(9)
    void byTouchOnAPhone() {
        browser.size(390, 844);
        browser.light("day");
        browser.run("location.hash = '#there/view-1?time=2s'");
        browser.until(READY);
        browser.press("a third of a stop longer");
        third(4);
        Map<String, Object> touch = Map.of("type", "touchStart", "touchPoints", List.of(Map.of("x", 200, "y", 460)));
        browser.driver().executeCdpCommand("Input.dispatchTouchEvent", touch);
        for (int x = 210; x <= 320; x += 10) {
            browser.driver()
                    .executeCdpCommand(
                            "Input.dispatchTouchEvent",
                            Map.of("type", "touchMove", "touchPoints", List.of(Map.of("x", x, "y", 460))));
        }
        browser.driver()
                .executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        browser.until("Number(document.querySelector('.axis-drawing').getAttribute('aria-valuenow')) > 9");
        List<?> small = (List<?>)
                browser.run(
                        "return [...document.querySelectorAll('.foot-bar button, .axis-touch')]"
                                + ".map(b => b.getBoundingClientRect()).filter(r => r.height < 56 || r.width < 56).length ? ['small'] : []");
        assertThat(small).as("keys of the field are 56 px or more").isEmpty();
        browser.press("Water, wish");
        browser.find(".wish-field");
        browser.press("Close");
        browser.pressAt(".foot-bar .go");
        browser.find(".staff");
        Object staff = browser.run("return Math.min(...[...document.querySelectorAll('.staff button, .step-foot button,"
                + " .guard')].filter(b => b.offsetParent).map(b => b.getBoundingClientRect().height))");
        assertThat(((Number) staff).doubleValue()).isGreaterThanOrEqualTo(56);
        assertThat(browser.run("return document.documentElement.scrollWidth")).isEqualTo(390L);
    }

    @Test
    @Order(10)
    void namesRolesAndContrastHoldEverywhere() throws Exception {
        for (String light : List.of("room", "day", "night")) {
            for (int[] size : SIZES) {
                browser.size(size[0], size[1]);
                browser.light(light);
                for (String place : List.of(
                        "#there/view-1?time=1s",
                        "#there/view-1/shot/1?time=1s",
                        "#there/view-1/shot/5?time=1s",
                        "#there/view-1/shot/9?time=1s",
                        "#there/view-1/log",
                        "#kit",
                        "#before",
                        "#after")) {
                    browser.run("location.hash = arguments[0]", place);
                    browser.until("!document.querySelector('.wait') && !document.querySelector('.reading') &&"
                            + " document.querySelector('main').children.length");
                    Thread.sleep(250);
                    assertThat(browser.violations())
                            .as(light + " " + size[0] + " " + place)
                            .isEmpty();
                }
            }
        }
        browser.light("room");
        browser.size(1440, 900);
    }

    @Test
    @Order(11)
    void arithmeticOfThePageIsThatOfTheCore() {
        for (double rate : new double[] {-0.3, 0, 0.15, 1}) {
            for (double open : new double[] {0.5, 25, 240}) {
                Object here = browser.driver()
                        .executeAsyncScript(
                                "const done = arguments[arguments.length - 1];"
                                        + "import('/web/logic/light.js').then(m => done(m.gathered(arguments[0], arguments[1])))",
                                open,
                                rate);
                assertThat(((Number) here).doubleValue())
                        .isCloseTo(new ChangingLight(rate).gathered(open), Offset.offset(1e-9 * open));
            }
        }
        Object label = browser.driver()
                .executeAsyncScript("const done = arguments[arguments.length - 1];"
                        + "import('/web/logic/light.js').then(m => done([m.dials.fNumber.value(m.dials.fNumber.at(11)),"
                        + " m.dials.iso.value(m.dials.iso.at(320)), m.dials.time.value(m.dials.time.at(30))]))");
        List<?> values = (List<?>) label;
        assertThat(((Number) values.get(0)).doubleValue()).isCloseTo(ThirdStops.exactFNumber(11), Offset.offset(1e-12));
        assertThat(((Number) values.get(1)).doubleValue()).isCloseTo(ThirdStops.exactIso(320), Offset.offset(1e-9));
        assertThat(((Number) values.get(2)).doubleValue()).isCloseTo(32, Offset.offset(1e-12));
    }

    @Test
    @Order(12)
    void aVanishedFolderIsTold() throws Exception {
        Path away = temporary.resolve("away");
        Files.move(pages.root(), away);
        try {
            browser.driver().navigate().refresh();
            browser.until("document.body.innerText.includes('the folder is gone')");
        } finally {
            Files.move(away, pages.root());
        }
        browser.press("Try again");
        browser.until("document.querySelector('main').children.length && !document.querySelector('.fault')");
        assertThat(browser.faults()).allMatch(f -> f.contains("404"));
    }

    @Test
    @Order(13)
    void aReadingThatIsStoppedChangesNothingAndCanBeBegunAgain() throws Exception {
        String before = Files.readString(pages.root().resolve("outing.json"));
        browser.run("location.hash = '#there/view-1/new'");
        browser.until("document.querySelector('.inputs')");
        browser.press("long,");
        browser.press("Stop");
        browser.until("document.body.innerText.includes('Nothing was changed')");
        pages.saved();
        JsonObject outing = pages.outing();
        assertThat(outing.getArray("views").getObject(1).getString("frames")).isEqualTo("long");
        assertThat(outing.getArray("log"))
                .isEqualTo(JsonParser.object().from(before).getArray("log"));
        browser.press("Read it");
        browser.until(READY);
    }
}
