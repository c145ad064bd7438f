package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** The further tools of After in a real browser: filter check, repair, side by side, blend; a card of thousands. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class AfterToolsPageTest extends AfterPages {

    private static final int MANY = 2000;

    @Test
    void aPairTellsTheFilterAndTheRepairSaysWhatItChanged() throws Exception {
        pages.open("#after/filter?folder=pair");
        browser.press("Check");
        browser.until("document.querySelector('.filter-result .big')");
        String said = browser.textAt(".filter-result .big");
        // as bright at sixteen times the time: the filter takes log2(16) = 4 stops
        assertThat(Double.parseDouble(said.substring(0, 4))).isCloseTo(4, Offset.offset(0.1));
        pages.open("#after/repair?picture=pair/f2.jpg");
        browser.press("Level, degrees up");
        pages.key("run");
        browser.until("document.querySelectorAll('.repair-view .tiles').length === 3");
        assertThat(browser.text()).contains("0.1");
        browser.press("Untouched");
        browser.until(
                "document.querySelector('.repair-view .tiles.shown').getAttribute('aria-label').startsWith('untouched')");
        assertThat(Files.exists(root.resolve("made/repaired-f2.tif.json"))).isTrue();
    }

    @Test
    void framesThatLieLooseAreAGroupOfTheirOwn() throws Exception {
        for (int i = 0; i < 3; i++) {
            StillFrame.write(root.resolve("loose" + i + ".jpg"), i, 0.5, i);
        }
        pages.open("#after");
        browser.run("location.reload()");
        browser.until("document.querySelector('[data-focus=sort-loose]')");
        assertThat(browser.text()).contains("3 frames beside the folders");
        pages.key("sort-loose");
        browser.until(SORTED);
        assertThat(browser.text()).contains("3 frames").doesNotContain("50 frames");
        assertThat((Long) browser.run("return [...document.querySelectorAll('.frame')]"
                        + ".filter(f => f.dataset.frame.startsWith('loose')).length"))
                .isEqualTo(3L);
        for (int i = 0; i < 3; i++) {
            Files.delete(root.resolve("loose" + i + ".jpg"));
        }
    }

    @Test
    void twoFramesLieInOnePictureAndOneLocatorMovesBoth() {
        pages.open("#after/sort?folder=burst");
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
    void eachPartGetsAShutterTimeAndTheBlendIsWritten() throws Exception {
        pages.open("#after/blend?frames=burst");
        browser.until("document.querySelector('.blend-row .piece')");
        browser.run("document.querySelector('[data-focus=strip-flowing]').focus()");
        pages.press(Keys.ARROW_LEFT);
        browser.until("document.querySelector('[data-focus=strip-flowing]').getAttribute('aria-valuetext')"
                + ".includes('3.2')");
        browser.until("document.querySelector('.seal-key')");
        browser.run("document.querySelector('.seal-key').click()");
        browser.until("document.querySelector('.edge-knob:not([hidden])')");
        browser.run("document.querySelector('.edge-knob').focus()");
        pages.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        browser.until("/^[1-9]\\d* pixels/.test(document.querySelector('.edge-knob').getAttribute('aria-valuetext'))");
        pages.key("tool-part-fixed");
        pages.key("wide-tree");
        browser.run("document.querySelector('.picture').focus()");
        pages.press(Keys.SPACE, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.SPACE);
        browser.until("document.querySelector('[data-focus=unstroke]')");
        pages.key("unstroke");
        browser.until("!document.querySelector('[data-focus=unstroke]')");
        pages.saved();
        browser.run("document.activeElement.blur()");
        pages.key("run");
        browser.until("document.querySelector('.blend-side .result')");
        JsonArray parts = record("blend-burst.tif")
                .getObject("documents")
                .getObject("--parts")
                .getArray("parts");
        assertThat(parts.toString()).contains("flowing").contains("edge=0.004");
        assertThat(Files.exists(root.resolve("made/blend-burst.masks"))).isTrue();
    }

    @Test
    void twoThousandFramesStopAtAKeyAndScrollWithoutHolding() throws Exception {
        Path many = Files.createDirectories(root.resolve("many"));
        for (int i = 0; i < MANY; i++) {
            StillFrame.write(many.resolve(String.format(Locale.ROOT, "m%04d.jpg", i)), i, 2, 5 * i);
        }
        pages.open("#after/sort?folder=many");
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
