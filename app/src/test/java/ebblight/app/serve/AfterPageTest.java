package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.TypedPictures;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.IccProfile;
import ebblight.imaging.LightPicture;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** From a folder of frames to files for paper and the web, in a real browser. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class AfterPageTest extends AfterPages {

    private static final String DRAWN =
            "document.querySelector('.print>img')?.naturalWidth && document.querySelector('.tone-step, .sheet-note')";

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
        pages.open("#after");
        pages.key("sort-burst");
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
        pages.key("marks");
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
        pages.open("#after");
        pages.key("stack-burst");
        pages.key("run");
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
        pages.key("to-finish");
        browser.until(DRAWN);
    }

    @Test
    @Order(4)
    void blackAndWhiteByThePicturesOwnColoursIsUndoneWordByWord() throws Exception {
        pages.key("drawer-colour");
        pages.key("bw");
        browser.until("document.querySelectorAll('[data-focus^=hang-]').length > 0");
        pages.key("colour-0-more");
        pages.key("drawer-tone");
        pages.key("grade-more");
        pages.key("grade-more");
        browser.until("document.querySelector('.say').innerText.includes('on grade 3')");
        pages.key("say-grade");
        browser.until("document.querySelector('.say .off')?.innerText.includes('grade 3')");
        pages.key("say-grade");
        browser.until("!document.querySelector('.say .off')");
        new Actions(browser.driver())
                .keyDown(Keys.CONTROL)
                .sendKeys("z")
                .keyUp(Keys.CONTROL)
                .perform();
        browser.until("document.querySelector('.say .off')?.innerText.includes('grade 3')");
        pages.key("say-grade");
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
        pages.key("drawer-edges");
        browser.until("document.querySelector('.blade')");
        for (int i = 0; i < 5; i++) {
            pages.key("paper-more");
        }
        browser.until("document.querySelector('.say').innerText.includes('40 × 30 cm')");
        pages.key("make");
        browser.until("document.querySelector('.finish-foot .result')");
        RgbPicture made = picture("made/finished-stack-burst.tif");
        assertThat((double) made.width() / made.height()).isCloseTo(4.0 / 3, Offset.offset(0.01));
        assertThat(made.red()).isEqualTo(made.green()).isEqualTo(made.blue());
        assertThat(record("finished-stack-burst.tif").getObject("documents").getObject("--with"))
                .containsKeys("blackAndWhite", "grade", "crop");
        pages.key("to-write");
        browser.find("[data-focus=write-print]");
    }

    private static RgbPicture picture(String path) throws IOException {
        return LightPicture.read(root.resolve(path), Work.alone()).light();
    }

    @Test
    @Order(7)
    void aPrintHasItsCentimetresAndAPageItsKilobytes() throws Exception {
        pages.open("#after/write?picture=made/finished-stack-burst.tif");
        pages.key("write-print");
        browser.until("document.querySelector('[aria-label=Print] .result')");
        JsonObject print = record("print-finished-stack-burst.tif").getObject("answer");
        RgbPicture paper = picture("made/print-finished-stack-burst.tif");
        // 40 cm at 300 pixels an inch of 2.54 cm (ISO 31-1: 1 in = 25.4 mm)
        assertThat(paper.width()).isEqualTo((int) Math.round(40 / 2.54 * 300));
        assertThat(print.getDouble("widthCentimetres")).isCloseTo(40, Offset.offset(0.01));
        for (int i = 0; i < 9; i++) {
            pages.key("bytes-less");
        }
        browser.until("document.querySelector('[aria-label=Web]').innerText.includes('at most 50 kB')");
        pages.key("write-web");
        browser.until("document.querySelector('[aria-label=Web] .result')");
        Path web = root.resolve("made/web-finished-stack-burst.jpg");
        assertThat(Files.size(web)).isLessThanOrEqualTo(50_000);
        assertThat(browser.text()).contains(Files.size(web) + " bytes");
        assertThat(record("web-finished-stack-burst.jpg").getArray("options")).contains("--at-most=50000");
    }

    @Test
    @Order(8)
    void anEditionGivesEachNumberOnceAndALessonIsWritten() throws Exception {
        browser.type("[data-focus=text-title]", "The Post", Keys.TAB);
        pages.key("write-edition");
        browser.until("document.querySelector('[aria-label=Edition] .result')?.innerText.includes('number 1 of 12')");
        pages.key("write-edition");
        browser.until("document.querySelector('[aria-label=Edition] .result')?.innerText.includes('number 2 of 12')");
        pages.key("write-lesson");
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
    void partsHangByTheirSealsAndAreLiftedByKeys() throws Exception {
        pages.open("#after/finish?picture=made/stack-burst.tif&drawer=tone");
        // the stack's own record names the frames that tell its parts
        browser.until("document.querySelector('.hang button .seal')");
        browser.run("document.querySelector('[data-focus=hang-0]').focus()");
        pages.press(Keys.ARROW_UP, Keys.ARROW_UP);
        browser.until("/the \\w+ lifted/.test(document.querySelector('.say').innerText)");
        pages.saved();
        browser.run("document.activeElement.blur()");
        pages.key("make");
        browser.until("document.querySelector('.finish-foot .result')");
        JsonObject record = record("finished-stack-burst-2.tif");
        assertThat(record.getObject("documents").getObject("--with").getArray("parts"))
                .hasSize(1);
        assertThat(record.getArray("sources").toString()).contains("--frames");
        assertThat(record.getObject("answer").getArray("done").toString()).contains("0.33 stop lighter");
    }

    /** A profile of a screen holds all that the picture has, as its own profile is the same. */
    @Test
    @Order(10)
    void aPrintIsProofedOnAProfileAndTheFileSaysSo() throws Exception {
        Path profiles = Files.createDirectories(root.resolve("profiles"));
        Files.write(profiles.resolve("screen.icc"), IccProfile.srgb().bytes());
        Files.writeString(profiles.resolve("none.icc"), "no profile");
        pages.open("#after/write?picture=made/finished-stack-burst.tif");
        browser.until("document.querySelectorAll('[data-focus=profile] option').length === 3");
        browser.run("const s = document.querySelector('[data-focus=profile]'); s.value = 'profiles/screen.icc';"
                + " s.dispatchEvent(new Event('change'))");
        browser.until("document.querySelector('.proved')?.innerText.includes('every colour holds')");
        pages.key("proof-look");
        browser.until("document.querySelector('.frame-picture img')?.naturalWidth");
        pages.press(Keys.ESCAPE);
        pages.key("write-print");
        browser.until("document.querySelector('[aria-label=Print] .result')?.innerText.includes('Proofed')");
        JsonObject record = record("print-finished-stack-burst-2.tif");
        assertThat(record.getArray("sources").toString()).contains("--proof");
        assertThat(record.getObject("answer").getObject("proof").getDouble("movedFraction"))
                .isLessThan(0.001);
    }

    @Test
    @Order(11)
    void aContactSheetIsWrittenOfAFolder() throws Exception {
        pages.open("#after/write");
        browser.until("document.querySelector('[data-focus=contact-of] option[value=\"folder pair\"]')");
        browser.run("const s = document.querySelector('[data-focus=contact-of]'); s.value = 'folder pair';"
                + " s.dispatchEvent(new Event('change'))");
        pages.key("contact-write");
        browser.until("document.querySelector('.contact .result')?.innerText.includes('2 pictures')");
        byte[] pdf = Files.readAllBytes(root.resolve("made/contact-pair.pdf"));
        // every PDF begins so (ISO 32000-1, 7.5.2)
        assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
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
            pages.open(place);
            browser.until("!document.querySelector('.wait, .after-wait')");
            assertThat(browser.run("return document.documentElement.scrollWidth"))
                    .as(place)
                    .isEqualTo(390L);
        }
        pages.open("#after/finish?picture=made/stack-burst.tif&drawer=edges");
        browser.until("document.querySelector('.kept-frame[tabindex]')");
        Object before = browser.run("return document.querySelector('.kept-frame').style.cssText");
        String moved = "document.querySelector('.kept-frame[tabindex]')?.style.cssText !== '" + before + "'";
        // the page may draw the frame anew under the finger, as when the draft arrives: then it is pulled again
        new WebDriverWait(browser.driver(), Duration.ofMinutes(2), Duration.ofSeconds(2))
                .withMessage(moved)
                .until(d -> {
                    boolean done = Boolean.TRUE.equals(browser.run("return " + moved));
                    if (!done) {
                        pullTheFrame();
                    }
                    return done;
                });
        Object small = browser.run("return Math.min(...[...document.querySelectorAll('.drawer button, .fronts button')]"
                + ".filter(b => b.offsetParent).map(b => b.getBoundingClientRect().height))");
        assertThat(((Number) small).doubleValue()).isGreaterThanOrEqualTo(56);
        browser.size(1440, 900);
        browser.light("room");
    }

    private static void pullTheFrame() {
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
                    pages.open(place);
                    browser.until("!document.querySelector('.wait, .after-wait') &&"
                            + " document.querySelector('main').children.length");
                    Thread.sleep(400);
                    assertThat(browser.violations())
                            .as(light + " " + width + " " + place)
                            .isEmpty();
                }
            }
        }
        browser.light("room");
        browser.size(1440, 900);
    }
}
