package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;

/** The exposure timer of the phone page keeps the wall's clock: seen, behind another page, after a reload, after a crash. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketTimerTest {

    /** How far a signal may be from the wall's clock. */
    private static final double MOST_MILLIS = 200;

    /** What the page says and lays on its sound, with the wall's clock; there before anything of the page runs. */
    private static final String WITNESS =
            """
            window.laid = [];
            window.said = [];
            window.hiddenAt = [];
            const start = OscillatorNode.prototype.start;
            OscillatorNode.prototype.start = function (at) {
              laid.push({ voice: this, hertz: this.frequency.value, wall: Date.now() + 1000 * (at - this.context.currentTime), on: Date.now(), at, context: this.context });
              return start.call(this, at);
            };
            const disconnect = AudioNode.prototype.disconnect;
            OscillatorNode.prototype.disconnect = function () {
              laid = laid.filter((one) => one.voice !== this);
              disconnect.call(this);
            };
            document.addEventListener('visibilitychange', () => {
              window.aheadOfHiding = document.visibilityState === 'hidden' ? [...laid] : window.aheadOfHiding;
            }, { capture: true });
            document.addEventListener('visibilitychange', () => hiddenAt.push([document.visibilityState, Date.now()]));
            new MutationObserver(() => {
              const word = ['Press at 0', 'Close in', 'Close now'].find((one) => document.querySelector('.expose')?.innerText.startsWith(one));
              if (word && said.at(-1)?.word !== word) {
                const voice = laid.filter((one) => one.hertz === 880).at(word === 'Close in' ? 0 : -3);
                said.push({ word, wall: Date.now(), late: voice ? 1000 * (voice.context.currentTime - voice.at) : null });
              }
            }).observe(document, { subtree: true, childList: true });
            """;

    @TempDir
    static Path temporary;

    private static PhonePage page;

    @BeforeAll
    static void start() throws IOException {
        page = PhonePage.of(temporary).offline();
    }

    @AfterAll
    static void end() {
        if (page != null) {
            page.close();
        }
    }

    @BeforeEach
    void expose() {
        page.browser().driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WITNESS));
        page.open("#kit");
        page.forget();
        page.open("#there/view-1/shot/8?time=4s");
    }

    private static double number(String expression) {
        return ((Number) page.browser().run("return " + expression)).doubleValue();
    }

    private static double opened() {
        return number(
                "JSON.parse(localStorage[Object.keys(localStorage).find(k => k.startsWith('ebblight-run'))]).openAt");
    }

    private static void saidWithin(String word, double wall) {
        assertThat(number("said.find(one => one.word === '" + word + "').wall"))
                .as(word)
                .isBetween(wall - MOST_MILLIS, wall + MOST_MILLIS);
    }

    private static List<?> tones() {
        return (List<?>) page.browser().run("return laid.map(one => [one.hertz, Math.round(one.wall)])");
    }

    private static void toneAt(Object tone, int hertz, double wall) {
        List<?> pair = (List<?>) tone;
        assertThat(((Number) pair.get(0)).intValue()).isEqualTo(hertz);
        assertThat(((Number) pair.get(1)).doubleValue()).isBetween(wall - MOST_MILLIS, wall + MOST_MILLIS);
    }

    @Test
    void seenThePageSaysOpenAndCloseByTheWallsClock() {
        page.browser().press("Count me in");
        double open = opened();
        page.browser().until("said.some(one => one.word === 'Close now')");
        saidWithin("Close in", open);
        saidWithin("Close now", open + 4000);
        List<?> tones = tones();
        assertThat(tones).hasSize(7);
        for (int i = 0; i < 3; i++) {
            toneAt(tones.get(i), 440, open - 3000 + 1000 * i);
            toneAt(tones.get(4 + i), 880, open + 4000 + 350 * i);
        }
        toneAt(tones.get(3), 880, open);
        assertThat(number("said.find(one => one.word === 'Close now').late"))
                .as("the sound's own clock against the words on the screen, milliseconds")
                .isBetween(-MOST_MILLIS, MOST_MILLIS);
    }

    @Test
    void behindAnotherPageTheSoundWasLaidAheadAndTheEndIsRightOnReturn() throws InterruptedException {
        page.browser().press("Count me in");
        double open = opened();
        String here = page.browser().driver().getWindowHandle();
        page.browser().driver().switchTo().newWindow(WindowType.TAB);
        String other = page.browser().driver().getWindowHandle();
        TimeUnit.MILLISECONDS.sleep(Math.round(open - System.currentTimeMillis()) + 7000);
        page.browser().driver().close();
        assertThat(other).isNotEqualTo(here);
        page.browser().driver().switchTo().window(here);
        page.browser().until("document.visibilityState === 'visible' && said.some(one => one.word === 'Close now')");
        double hidden = number("hiddenAt.find(one => one[0] === 'hidden')[1]");
        assertThat(hidden).as("the page was hidden before the end").isLessThan(open + 4000);
        List<?> ahead = (List<?>) page.browser().run("return aheadOfHiding.map(one => [one.hertz, one.wall])");
        toneAt(ahead.get(4), 880, open + 4000);
        double over = (System.currentTimeMillis() - open) / 1000 - 4;
        assertThat(number("parseInt(document.querySelector('.count').innerText)"))
                .isBetween(over - 1, over + 2);
    }

    @Test
    void aReloadInTheMiddleGoesOn() {
        page.browser().press("Count me in");
        double open = opened();
        page.browser().until("said.some(one => one.word === 'Close in')");
        page.browser().driver().navigate().refresh();
        page.browser().until("said.some(one => one.word === 'Close in')");
        assertThat(opened()).isEqualTo(open);
        page.browser().pressAt(".expose .count");
        page.browser().until("laid.length > 0");
        toneAt(tones().get(tones().size() - 3), 880, open + 4000);
        page.browser().until("said.some(one => one.word === 'Close now')");
        saidWithin("Close now", open + 4000);
    }

    @Test
    void aClockSetWhileTheShutterIsOpenChangesNoSecondOfIt() {
        page.browser().press("Count me in");
        page.browser().until("said.some(one => one.word === 'Close in')");
        page.browser()
                .run("window.true = Date.now; window.opened = JSON.parse(localStorage[Object.keys(localStorage)"
                        + ".find(k => k.startsWith('ebblight-run'))]).openAt; Date.now = () => window.true() - 90000");
        page.browser().until("document.querySelector('.expose').innerText.includes('Clock set back 90 s')");
        page.browser().until("document.querySelector('.expose').innerText.startsWith('Close now')");
        assertThat(number("window.true() - window.opened - 4000"))
                .as("milliseconds after the true end")
                .isBetween(-MOST_MILLIS, 1000.0);
        page.browser().press("I closed it now");
        page.browser().until("document.querySelector('.judge')");
        page.open("#there/view-1/log");
        page.browser().until("document.querySelector('.log-rows li')");
        assertThat(page.browser()
                        .run("return [...document.querySelectorAll('.log-rows li')].map(row => row.innerText)"
                                + ".filter(row => parseFloat(row.match(/open ([0-9.]+) s/)?.[1]) > 80)"))
                .as("frames that were open for the ninety seconds of the clock")
                .isEqualTo(List.of());
        assertThat(page.browser().text()).containsPattern("open (3[.]9|[45]([.][0-9])?) s");
    }

    @Test
    void theLogOutlivesACrashOfTheTab() throws IOException {
        page.browser().press("Count me in");
        page.browser().until("said.some(one => one.word === 'Close in')");
        String crashing = page.browser().driver().getWindowHandle();
        page.browser().driver().switchTo().newWindow(WindowType.TAB);
        String spare = page.browser().driver().getWindowHandle();
        page.browser().driver().switchTo().window(crashing);
        page.browser().press("I closed it now");
        page.browser().until("document.querySelector('.judge')");
        try {
            page.browser().driver().executeCdpCommand("Page.crash", Map.of());
        } catch (WebDriverException crashed) {
            assertThat(crashed.getMessage()).contains("crash");
        }
        page.browser().driver().switchTo().window(spare);
        page.open("#there/view-1/log");
        page.browser().until("document.querySelectorAll('.log-rows li').length === 1");
        assertThat(page.browser().text()).containsPattern("open [0-9./]+ s").contains("not judged");
    }
}
