package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.app.TypedPictures;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.LightPicture;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** From a folder of frames to files for paper and the web, in a real browser. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class AfterPageTest {

    private static final int MANY = 2000;
    private static final String SORTED = "document.querySelector('.sort-list .frame.best')";
    private static final String DRAWN =
            "document.querySelector('.print>img')?.naturalWidth && document.querySelector('.tone-step, .sheet-note')";

    @TempDir
    static Path temporary;

    private static OpenPages pages;
    private static Browser browser;
    private static Path root;

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        root = Files.createDirectories(temporary.resolve("outing"));
        TestOuting.write(root, "Shore");
        Path pair = Files.createDirectories(root.resolve("pair"));
        still(pair.resolve("f1.jpg"), 1, 0.125, 0);
        still(pair.resolve("f2.jpg"), 2, 2, 20);
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
        browser.driver().get(pages.server().link().toString());
        browser.run("localStorage.setItem('ebblight-tour', 'seen')");
    }

    /** A view in which everything stands, as bright whatever the time: what a longer time adds a filter takes. */
    private static void still(Path file, int seed, double exposureSeconds, int afterSeconds) throws IOException {
        int w = 240;
        int h = 160;
        byte[] codes = new byte[3 * w * h];
        SplittableRandom dice = new SplittableRandom(seed);
        for (int p = 0; p < w * h; p++) {
            double x = p % w;
            int y = p / w;
            double v = 120 + 60 * Math.sin(x / 9 + Math.sin(y / 17.0)) + 6 * dice.nextDouble();
            Arrays.fill(codes, 3 * p, 3 * p + 3, (byte) Math.round(v));
        }
        JpegWriter.write(file, CodedPicture.srgb8(w, h, codes), facts(exposureSeconds, afterSeconds));
    }

    private static PictureFacts facts(double exposureSeconds, int afterSeconds) {
        return new PictureFacts(
                OptionalDouble.of(exposureSeconds),
                OptionalDouble.of(8),
                OptionalDouble.of(100),
                OptionalDouble.of(24),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15).plusSeconds(afterSeconds)),
                1,
                List.of(),
                "test frame");
    }

    @AfterAll
    static void stop() {
        if (pages != null) {
            pages.close();
        }
    }

    @AfterEach
    void noFault() {
        assertThat(browser.faults()).isEmpty();
    }

    private static void open(String address) {
        browser.run("document.activeElement.blur(); location.hash = arguments[0]", address);
    }

    /** Goes on by the tab key to the key with this mark, and presses it. */
    private static void key(String focus) {
        browser.find("[data-focus=\"" + focus + "\"]");
        for (int i = 0; i < 200; i++) {
            if (focus.equals(browser.run("return document.activeElement.dataset.focus || ''"))) {
                pages.press(Keys.ENTER);
                return;
            }
            pages.press(Keys.TAB);
        }
        throw new AssertionError("the tab key never comes to " + focus);
    }

    private static JsonObject record(String file) throws Exception {
        return JsonParser.object().from(Files.readString(root.resolve("made").resolve(file + ".json")));
    }

    private static long checksum(Path folder) throws IOException {
        long sum = 0;
        try (Stream<Path> list = Files.list(folder)) {
            for (Path file : list.filter(f -> f.toString().endsWith(".jpg")).toList()) {
                sum = 31 * sum
                        + Arrays.hashCode(Files.readAllBytes(file))
                        + Files.getLastModifiedTime(file).toMillis();
            }
        }
        return sum;
    }

    @Test
    @Order(1)
    void aFolderBecomesGroupsAndWhatIsKeptIsMarkedBesideItByKeyboard() throws Exception {
        long before = checksum(root.resolve("burst"));
        open("#after");
        key("sort-burst");
        browser.until(SORTED);
        assertThat(browser.text()).contains("50 frames").contains("never deleted");
        assertThat((Long) browser.run("return document.querySelectorAll('.frame[aria-label^=\"Rank\"]').length"))
                .isGreaterThan(10);
        pages.press(Keys.ARROW_RIGHT);
        pages.press("k");
        browser.until("document.querySelector('.frame.best.kept')");
        String kept = String.valueOf(browser.run("return document.querySelector('.frame.best').dataset.frame"));
        pages.saved();
        assertThat(pages.outing().getArray("kept")).containsExactly(kept);
        browser.run("document.activeElement.blur()");
        key("marks");
        browser.until("document.getElementById('notice').textContent.includes('1 marked')");
        Path sidecar = root.resolve(kept.replace(".jpg", ".xmp"));
        // xmp:Rating runs from 1 to 5, and 5 is the best (ISO 16684-1, 8.4; from memory)
        assertThat(Files.readString(sidecar)).containsPattern("xmp:Rating=\"5\"");
        assertThat(checksum(root.resolve("burst"))).isEqualTo(before);
    }

    @Test
    @Order(2)
    void theFrameIsInTheAddressAndTheBackKeyClosesIt() {
        browser.run("document.querySelector('.frame.best').focus()");
        pages.press(Keys.ENTER);
        browser.until("document.querySelector('.frame-sheet img')?.naturalWidth");
        assertThat(String.valueOf(browser.run("return location.hash"))).contains("frame=burst");
        browser.driver().navigate().refresh();
        browser.until("document.querySelector('.frame-sheet img')?.naturalWidth");
        pages.press(Keys.ESCAPE);
        browser.until("!document.querySelector('.frame-sheet')");
        assertThat(String.valueOf(browser.run("return document.activeElement.dataset.frame")))
                .startsWith("burst/");
    }

    @Test
    @Order(3)
    void aBurstIsStackedToTheVeryFileOfTheCommandLine() throws Exception {
        open("#after");
        key("stack-burst");
        key("run");
        browser.until("document.querySelector('.stack-sheet .tiles img')?.naturalWidth");
        Path typed = temporary.resolve("typed.tif");
        new TypedPictures()
                .make(
                        new String[] {
                            "stack", "-o=" + typed, "--", root.resolve("burst").toString()
                        },
                        Work.alone());
        assertThat(Files.mismatch(root.resolve("made/stack-burst.tif"), typed)).isEqualTo(-1);
        assertThat(record("stack-burst.tif").getString("command")).isEqualTo("stack");
        assertThat(record("stack-burst.tif").getArray("sources")).hasSize(50);
        key("to-finish");
        browser.until(DRAWN);
    }

    @Test
    @Order(4)
    void blackAndWhiteByThePicturesOwnColoursIsUndoneWordByWord() throws Exception {
        key("drawer-colour");
        key("bw");
        browser.until("document.querySelectorAll('[data-focus^=hang-]').length > 0");
        key("colour-0-more");
        key("drawer-tone");
        key("grade-more");
        key("grade-more");
        browser.until("document.querySelector('.say').innerText.includes('on grade 3')");
        key("say-grade");
        browser.until("document.querySelector('.say .off')?.innerText.includes('grade 3')");
        key("say-grade");
        browser.until("!document.querySelector('.say .off')");
        new Actions(browser.driver())
                .keyDown(Keys.CONTROL)
                .sendKeys("z")
                .keyUp(Keys.CONTROL)
                .perform();
        browser.until("document.querySelector('.say .off')?.innerText.includes('grade 3')");
        key("say-grade");
        pages.saved();
        JsonObject finish = pages.outing()
                .getObject("finishes")
                .getObject("made/stack-burst.tif")
                .getObject("finish");
        assertThat(finish.getDouble("grade")).isEqualTo(3);
        JsonArray colours = finish.getObject("blackAndWhite").getArray("colours");
        assertThat(colours).isNotEmpty();
        assertThat(String.valueOf(browser.run("return document.querySelector('.say').innerText")))
                .contains("in black and white");
    }

    @Test
    @Order(5)
    void theTestStripIsLaidOnThePictureAndGivesTheGrade() {
        browser.run("document.activeElement.blur()");
        pages.press("g");
        browser.until("document.querySelectorAll('.pieces button[style*=url]').length === 5");
        assertThat(browser.text()).contains("grade 3");
        browser.pressAt("[data-focus=grade-3]");
        browser.until("document.querySelector('.say').innerText.includes('on grade 3½')");
    }

    @Test
    @Order(6)
    void paperComesFirstAndTheFinishedFileIsGreyAndHasItsRatio() throws Exception {
        key("drawer-edges");
        browser.until("document.querySelector('.blade')");
        for (int i = 0; i < 5; i++) {
            key("paper-more");
        }
        browser.until("document.querySelector('.say').innerText.includes('40 × 30 cm')");
        key("make");
        browser.until("document.querySelector('.finish-foot .result')");
        RgbPicture made = picture("made/finished-stack-burst.tif");
        assertThat((double) made.width() / made.height()).isCloseTo(4.0 / 3, Offset.offset(0.01));
        assertThat(made.red()).isEqualTo(made.green()).isEqualTo(made.blue());
        assertThat(record("finished-stack-burst.tif").getObject("documents").getObject("--with"))
                .containsKeys("blackAndWhite", "grade", "crop");
        key("to-write");
        browser.find("[data-focus=write-print]");
    }

    private static RgbPicture picture(String path) throws IOException {
        return LightPicture.read(root.resolve(path), Work.alone()).light();
    }

    @Test
    @Order(7)
    void aPrintHasItsCentimetresAndAPageItsKilobytes() throws Exception {
        open("#after/write?picture=made/finished-stack-burst.tif");
        key("write-print");
        browser.until("document.querySelector('[aria-label=Print] .result')");
        JsonObject print = record("print-finished-stack-burst.tif").getObject("answer");
        RgbPicture paper = picture("made/print-finished-stack-burst.tif");
        // 40 cm at 300 pixels an inch of 2.54 cm (ISO 31-1: 1 in = 25.4 mm)
        assertThat(paper.width()).isEqualTo((int) Math.round(40 / 2.54 * 300));
        assertThat(print.getDouble("widthCentimetres")).isCloseTo(40, Offset.offset(0.01));
        for (int i = 0; i < 9; i++) {
            key("bytes-less");
        }
        browser.until("document.querySelector('[aria-label=Web]').innerText.includes('at most 50 kB')");
        key("write-web");
        browser.until("document.querySelector('[aria-label=Web] .result')");
        Path web = root.resolve("made/web-finished-stack-burst.jpg");
        assertThat(Files.size(web)).isLessThanOrEqualTo(50_000);
        assertThat(browser.text()).contains(Files.size(web) + " bytes");
        assertThat(record("web-finished-stack-burst.jpg").getArray("options")).contains("--at-most=50000");
    }

    @Test
    @Order(8)
    void anEditionGivesEachNumberOnceAndALessonIsWritten() throws Exception {
        browser.find("[data-focus=text-title]").sendKeys("The Post", Keys.TAB);
        key("write-edition");
        browser.until("document.querySelector('[aria-label=Edition] .result')?.innerText.includes('number 1 of 12')");
        key("write-edition");
        browser.until("document.querySelector('[aria-label=Edition] .result')?.innerText.includes('number 2 of 12')");
        key("write-lesson");
        browser.until("document.querySelector('[aria-label=Lesson] .result')");
        try (Stream<Path> made = Files.list(root.resolve("made"))) {
            assertThat(made.map(f -> f.getFileName().toString()))
                    .contains(
                            "certificate-finished-stack-burst.pdf",
                            "certificate-finished-stack-burst-2.pdf",
                            "edition-finished-stack-burst.json",
                            "lesson-finished-stack-burst.pdf");
        }
    }

    @Test
    @Order(9)
    void aPairTellsTheFilterAndTheRepairSaysWhatItChanged() throws Exception {
        open("#after/filter?folder=pair");
        browser.press("Check");
        browser.until("document.querySelector('.filter-result .big')");
        String said = browser.find(".filter-result .big").getText();
        // as bright at sixteen times the time: the filter takes log2(16) = 4 stops
        assertThat(Double.parseDouble(said.substring(0, 4))).isCloseTo(4, Offset.offset(0.1));
        open("#after/repair?picture=pair/f2.jpg");
        browser.press("Level, degrees up");
        key("run");
        browser.until("document.querySelectorAll('.repair-view .tiles').length === 3");
        assertThat(browser.text()).contains("0.1");
        browser.press("Untouched");
        browser.until(
                "document.querySelector('.repair-view .tiles.shown').getAttribute('aria-label').startsWith('untouched')");
        assertThat(Files.exists(root.resolve("made/repaired-f2.tif.json"))).isTrue();
    }

    @Test
    @Order(10)
    void twoFramesLieInOnePictureAndOneLocatorMovesBoth() {
        open("#after/sort?folder=burst");
        browser.until(SORTED);
        browser.pressAt("[data-focus=side-0]");
        browser.until("document.querySelector('.seal-row [aria-pressed=true]') ||"
                + " document.querySelector('.spine')?.innerText.includes('straight edge')");
        browser.run("document.querySelector('.side-stage').focus()");
        pages.press("+", "+");
        browser.until("document.querySelectorAll('.layer img.tile').length >= 2");
        browser.run("document.querySelector('[data-focus=zoom-2]').click();"
                + " document.querySelector('.side-stage').focus()");
        browser.size(700, 500);
        Object before = browser.run("return document.querySelector('.side-inner').style.transform");
        pages.press(Keys.ARROW_UP, Keys.ARROW_UP);
        assertThat(browser.run("return document.querySelector('.side-inner').style.transform"))
                .isNotEqualTo(before);
        browser.size(1440, 900);
        assertThat(browser.text()).contains("Rock");
        assertThat((Long) browser.run("return document.querySelectorAll('.leans li[aria-label]').length"))
                .isPositive();
    }

    @Test
    @Order(11)
    void eachPartGetsAShutterTimeAndTheBlendIsWritten() throws Exception {
        open("#after/blend?frames=burst");
        browser.until("document.querySelector('.blend-row .piece')");
        browser.run("document.querySelector('[data-focus=strip-flowing]').focus()");
        pages.press(Keys.ARROW_LEFT);
        browser.until("document.querySelector('[data-focus=strip-flowing]').getAttribute('aria-valuetext')"
                + ".includes('3.2')");
        browser.run("document.activeElement.blur()");
        key("run");
        browser.until("document.querySelector('.blend-side .result')");
        JsonArray parts = record("blend-burst.tif")
                .getObject("documents")
                .getObject("--parts")
                .getArray("parts");
        assertThat(parts.toString()).contains("flowing");
        assertThat(Files.exists(root.resolve("made/blend-burst.masks"))).isTrue();
    }

    @Test
    @Order(12)
    void byTouchOnAPhone() {
        browser.size(390, 844);
        browser.light("day");
        for (String place : List.of(
                "#after",
                "#after/sort?folder=burst",
                "#after/filter?folder=pair",
                "#after/finish?picture=made/stack-burst.tif",
                "#after/repair?picture=pair/f2.jpg",
                "#after/write?picture=made/finished-stack-burst.tif",
                "#after/blend?frames=burst")) {
            open(place);
            browser.until("!document.querySelector('.wait, .after-wait')");
            assertThat(browser.run("return document.documentElement.scrollWidth"))
                    .as(place)
                    .isEqualTo(390L);
        }
        open("#after/finish?picture=made/stack-burst.tif&drawer=edges");
        browser.until("document.querySelector('.kept-frame[tabindex]')");
        Object before = browser.run("return document.querySelector('.kept-frame').style.cssText");
        List<?> middle = (List<?>) browser.run("const k = document.querySelector('.kept-frame');"
                + " k.scrollIntoView({block: 'center'}); const r = k.getBoundingClientRect();"
                + " return [Math.round(r.left + r.width / 2), Math.round(r.top + r.height / 2)]");
        int x = ((Number) middle.get(0)).intValue();
        int y = ((Number) middle.get(1)).intValue();
        touch("touchStart", x, y);
        for (int i = 1; i <= 6; i++) {
            touch("touchMove", x + 8 * i, y);
        }
        browser.driver()
                .executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        browser.until("document.querySelector('.kept-frame[tabindex]')?.style.cssText !== '" + before + "'");
        Object small = browser.run("return Math.min(...[...document.querySelectorAll('.drawer button, .fronts button')]"
                + ".filter(b => b.offsetParent).map(b => b.getBoundingClientRect().height))");
        assertThat(((Number) small).doubleValue()).isGreaterThanOrEqualTo(56);
        browser.size(1440, 900);
        browser.light("room");
    }

    private static void touch(String type, int x, int y) {
        browser.driver()
                .executeCdpCommand(
                        "Input.dispatchTouchEvent",
                        Map.of("type", type, "touchPoints", List.of(Map.of("x", x, "y", y))));
    }

    @Test
    @Order(13)
    void namesRolesAndContrastHold() throws Exception {
        for (String light : List.of("room", "day", "night")) {
            for (int width : new int[] {1440, 390}) {
                browser.size(width, width < 700 ? 844 : 900);
                browser.light(light);
                for (String place : List.of(
                        "#after",
                        "#after/sort?folder=burst",
                        "#after/side",
                        "#after/filter?folder=pair",
                        "#after/blend?frames=burst",
                        "#after/repair?picture=pair/f2.jpg",
                        "#after/finish?picture=made/stack-burst.tif&drawer=tone",
                        "#after/finish?picture=made/stack-burst.tif&drawer=colour",
                        "#after/finish?picture=made/stack-burst.tif&drawer=edges",
                        "#after/write?picture=made/finished-stack-burst.tif")) {
                    open(place);
                    browser.until("!document.querySelector('.wait, .after-wait') &&"
                            + " document.querySelector('main').children.length");
                    Thread.sleep(400);
                    assertThat(pages.violations())
                            .as(light + " " + width + " " + place)
                            .isEmpty();
                }
            }
        }
        browser.light("room");
        browser.size(1440, 900);
    }

    @Test
    @Order(14)
    void twoThousandFramesStopAtAKeyAndScrollWithoutHolding() throws Exception {
        Path many = Files.createDirectories(root.resolve("many"));
        for (int i = 0; i < MANY; i++) {
            still(many.resolve(String.format(Locale.ROOT, "m%04d.jpg", i)), i, 2, 5 * i);
        }
        open("#after/sort?folder=many");
        browser.press("Stop");
        browser.until("document.body.innerText.includes('Nothing was changed')");
        browser.press("Try again");
        browser.until(SORTED);
        assertThat(browser.text()).contains(MANY + " frames");
        Object told = browser.driver()
                .executeAsyncScript(
                        """
                        const done = arguments[0];
                        performance.clearMeasures();
                        const height = document.documentElement.scrollHeight;
                        const seen = new Set();
                        let most = 0;
                        let step = 0;
                        const next = () => {
                          document.querySelectorAll('.sort-list .frame').forEach((f) => seen.add(f.dataset.frame));
                          most = Math.max(most, document.querySelectorAll('.sort-list .frame').length);
                          if (scrollY + innerHeight >= height - 2 || step++ > 600) {
                            const times = performance.getEntriesByName('sort-draw').map((e) => e.duration).sort((a, b) => a - b);
                            done([seen.size, most, times[times.length >> 1], times[Math.floor(0.95 * times.length)]]);
                            return;
                          }
                          scrollBy(0, 400);
                          requestAnimationFrame(() => requestAnimationFrame(next));
                        };
                        next();""");
        List<?> numbers = (List<?>) told;
        assertThat(((Number) numbers.get(0)).intValue()).isEqualTo(MANY);
        assertThat(((Number) numbers.get(1)).intValue())
                .as("frames drawn at once")
                .isLessThan(400);
        System.out.printf(
                "2,000 frames: a step of the scroll draws in %.1f ms (median), %.1f ms (95 %%)%n",
                ((Number) numbers.get(2)).doubleValue(), ((Number) numbers.get(3)).doubleValue());
        assertThat(((Number) numbers.get(2)).doubleValue())
                .as("a step of the scroll draws within a frame of the screen")
                .isLessThan(16);
    }
}
