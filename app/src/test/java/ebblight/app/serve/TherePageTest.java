package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** There on the evening of a plan: light by the sun, clocks of the place, views not filmed yet, frames without times. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class TherePageTest extends PagesInBrowser {

    /** A dusk on the equator at the equinox: the sun goes straight down, 15° an hour. */
    private static final Instant DUSK = Instant.parse("2027-03-20T18:20:00Z");

    private static final String READY =
            "document.querySelector('.axis-drawing') && !document.querySelector('.reading')";

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        Path root = Files.createDirectories(temporary.resolve("outing"));
        TestOuting.write(root, "Shore");
        Path untimed = Files.createDirectories(root.resolve("untimed"));
        try (Stream<Path> list = Files.list(root.resolve("burst"))) {
            List<Path> frames = list.sorted().limit(24).toList();
            for (int i = 0; i < frames.size(); i++) {
                Files.copy(frames.get(i), untimed.resolve("frame-" + (100 + i) + ".jpg"));
            }
        }
        Files.writeString(
                root.resolve("outing.json"),
                """
                {"schema":"outing/1","revision":1,"name":"Test shore","zone":"Pacific/Auckland",
                 "place":{"name":"Line","at":"0,0"},
                 "plan":{"guess":{"windMetresPerSecond":8},
                         "chosen":{"view":"view-2","start":"2027-03-20T18:00:00Z","end":"2027-03-20T18:40:00Z","why":[]}},
                 "views":[{"id":"view-1","name":"Shore","frames":"burst","azimuth":270,"altitude":-24,"focalMillimetres":24},
                          {"id":"view-2","name":"Point","hour":{"sunAltitude":[-6,5]}},
                          {"id":"view-3","name":"Untimed","frames":"untimed"}],
                 "light":{"readings":[{"dials":{"fNumber":21,"time":30,"iso":6},"meter":"f/11 0.125s ISO100",
                                       "at":"2027-03-20T18:19:00Z"}]},
                 "guard":{"leaveBy":"08:00","packingMinutes":3,"water":"falling"},
                 "log":[]}""",
                StandardCharsets.UTF_8);
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
        browser.driver()
                .executeCdpCommand(
                        "Page.addScriptToEvaluateOnNewDocument",
                        Map.of(
                                "source",
                                "localStorage.setItem('ebblight-tour', 'seen'); const shift = " + DUSK.toEpochMilli()
                                        + " - Date.now(); const now = Date.now.bind(Date); Date.now = () => now() + shift;"));
        browser.driver().get(pages.server().link().toString());
        browser.until(READY);
    }

    @AfterEach
    @Override
    void noFault() {
        assertThat(browser.faults()).allMatch(f -> f.contains("400"));
    }

    private static void view(String address) {
        browser.size(1440, 900);
        browser.run("location.hash = arguments[0]", address);
    }

    @Test
    void oneReadingAtDuskFadesByTheSunOfThePlace() {
        view("#there/view-1?time=1s");
        browser.until(READY);
        browser.press("Meter");
        browser.until("document.querySelector('.meter-now')?.innerText.includes('by the sun')");
        Matcher rate = Pattern.compile("fades (\\d\\.\\d+) stop/min").matcher(browser.textAt(".meter-now"));
        assertThat(rate.find()).isTrue();
        // From 585 to 410 lx at sunset to 3.5 to 2 lx at the end of civil twilight, 6° lower (AMS Glossary of
        // Meteorology, civil twilight), is 6.9 to 8.2 stops; at 15° an hour it takes 24 min: 0.29 to 0.34 a minute.
        assertThat(Double.parseDouble(rate.group(1))).isCloseTo(0.31, Offset.offset(0.12));
    }

    @Test
    void clocksAreThoseOfThePlaceAndNotOfTheMachine() {
        view("#there/view-1/shot/1?time=1s");
        browser.find(".guard");
        // The clock of the test runs on from 18:20 UTC. Auckland keeps UTC+13 until April (IANA time zone database):
        // 18:20 UTC is 07:20 there, 40 min before 08:00
        assertThat(browser.textAt(".guard").replaceAll("\\s+", " "))
                .contains("Leave by 08:00")
                .containsPattern("(3\\d|40) min");
    }

    @Test
    void theSunThatComesIntoThePictureIsSaidInTheSettingsAndAtTheShot() {
        view("#there/view-1?time=240s");
        browser.until(READY);
        assertThat(browser.text()).doesNotContain("comes into the picture");
        // On the equator at the equinox the sun sets due west at 6 by the local sun, 18:07 at Greenwich (equation of
        // time,
        // common knowledge), at 15° an hour; the upper edge of the picture is 26.57° over its axis (24 mm, 36 x 24 mm),
        // 2.57° high, and the sun's limb is there eleven minutes earlier, 17:56 UTC: 06:56 in Auckland, UTC+13
        String enters = "The sun comes into the picture at 06:5[5-8]:\\d\\d, before the shutter closes";
        browser.run("window.evening = Date.now; const at = Date.parse('2027-03-20T17:54:00Z') - Date.now();"
                + " Date.now = () => window.evening() + at");
        try {
            browser.until("document.querySelector('.side').innerText.includes('comes into the picture')");
            assertThat(browser.text()).containsPattern(enters).contains("optical finder");
            for (int step = 6; step <= 8; step++) {
                view("#there/view-1/shot/" + step + "?time=240s");
                browser.until("document.querySelector('.step')?.innerText.includes('comes into the picture')");
            }
        } finally {
            browser.run("Date.now = window.evening");
        }
    }

    @Test
    void aViewThatIsOnlyPlannedHasItsHourAndAFirstGuess() {
        view("#there/view-1?time=1s");
        browser.until(READY);
        browser.press("Point, planned");
        browser.until("document.querySelector('.guess-said')?.innerText.includes('Water')");
        assertThat(browser.text())
                .contains("07:00 to 07:40")
                .contains("Leave by 08:00")
                .contains("a guess from wind and cloud alone")
                .contains("8 m/s");
        browser.press("Shore");
        browser.until(READY);
    }

    @Test
    void framesThatDoNotSayWhenTheyWereTakenAreAskedFor() throws Exception {
        view("#there/view-3");
        browser.until("document.body.innerText.includes('How far apart are these frames?')");
        browser.press("One frame every down");
        browser.press("Read them so");
        browser.until(READY + " && document.body.innerText.includes('One frame every')");
        pages.saved();
        JsonObject view = pages.outing().getArray("views").getObject(2);
        // the key runs on while held: a slow machine may step twice
        double gap = 1 / view.getDouble("framesPerSecond");
        assertThat(gap).isBetween(1.0, 11.01);
        assertThat(browser.text()).contains("One frame every " + Math.round(gap) + " s, as you said");
    }

    @Test
    void onAPhoneAPartIsCorrectedByOneTouch() throws Exception {
        view("#there/view-1?time=1s");
        browser.until(READY);
        browser.size(390, 844);
        browser.press("Correct");
        browser.press("Rock");
        browser.find(".picture.drawing");
        List<?> box = (List<?>) browser.run("const r = document.querySelector('.picture').getBoundingClientRect();"
                + " return [r.left, r.top, r.width, r.height]");
        double left = ((Number) box.get(0)).doubleValue();
        double top = ((Number) box.get(1)).doubleValue() + 0.9 * ((Number) box.get(3)).doubleValue();
        double width = ((Number) box.get(2)).doubleValue();
        touch("touchStart", left + 0.2 * width, top);
        for (int i = 3; i <= 8; i++) {
            touch("touchMove", left + 0.1 * i * width, top);
        }
        browser.driver()
                .executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        pages.saved();
        JsonObject stroke = pages.outing()
                .getArray("views")
                .getObject(0)
                .getArray("strokes")
                .getObject(0);
        assertThat(stroke.getString("kind")).isEqualTo("fixed");
        assertThat(stroke.getArray("points").size()).isGreaterThan(3);
        Object small = browser.run("return Math.min(...[...document.querySelectorAll('.tags button')]"
                + ".map(b => b.getBoundingClientRect().height))");
        assertThat(((Number) small).doubleValue()).isGreaterThanOrEqualTo(56);
        browser.press("Done");
        browser.until("document.querySelector('.foot-bar').offsetParent");
        browser.size(1440, 900);
    }

    private static void touch(String type, double x, double y) {
        browser.driver()
                .executeCdpCommand(
                        "Input.dispatchTouchEvent",
                        Map.of("type", type, "touchPoints", List.of(Map.of("x", (int) x, "y", (int) y))));
    }
}
