package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The phone page in sun and at night, upright, small and lying: nothing is cut off, what is read has the contrast of WCAG
 * 2.2's level AAA (7:1 by day; at night 4.5:1 for large text, which is bold of 14 pt, 18.66 px, or more), what is touched
 * is 56 px high.
 */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketLookTest {

    private static final List<String> PLACES = List.of(
            "#there/view-1",
            "#there/view-2",
            "#there/view-2?time=1s",
            "#there/view-1/shot/1?time=8s",
            "#there/view-1/shot/2?time=8s",
            "#there/view-1/shot/3?time=8s",
            "#there/view-1/shot/4?time=8s",
            "#there/view-1/shot/5?time=8s",
            "#there/view-1/shot/6?time=8s",
            "#there/view-1/shot/7?time=8s",
            "#there/view-1/shot/8?time=8s",
            "#there/view-1/shot/9?time=8s",
            "#there/view-1/log",
            "#before",
            "#after",
            "#kit");

    /** Relative luminance and contrast as WCAG 2.2 defines them. */
    private static final String LOOK =
            """
            const out = [];
            const night = document.body.dataset.light === 'night';
            const lum = (c) => {
              const f = c.map((v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
              return 0.2126 * f[0] + 0.7152 * f[1] + 0.0722 * f[2];
            };
            const rgb = (text) => (text.match(/[\\d.]+/g) || []).map(Number);
            const ground = (node) => {
              for (let e = node; e; e = e.parentElement) {
                const c = rgb(getComputedStyle(e).backgroundColor);
                if (c.length === 3 || c[3] === 1) { return c.slice(0, 3); }
              }
              return [255, 255, 255];
            };
            const shown = (e) => e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !e.closest('.unseen,script,style,noscript,.skip');
            if (document.documentElement.scrollWidth > innerWidth) { out.push('wider than the screen'); }
            const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
            let read = 0;
            for (let t = walk.nextNode(); t; t = walk.nextNode()) {
              const e = t.parentElement;
              if (!t.data.trim() || !shown(e)) { continue; }
              read++;
              const style = getComputedStyle(e);
              const [a, b] = [lum(rgb(style.color)), lum(ground(e))];
              const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
              const what = t.data.trim().slice(0, 40);
              if (night && (parseFloat(style.fontSize) < 19 || Number(style.fontWeight) < 700)) { out.push(`${style.fontSize} ${style.fontWeight}: ${what}`); }
              if (ratio < (night ? 4.5 : 7)) { out.push(`contrast ${ratio.toFixed(2)}: ${what}`); }
            }
            for (const b of document.querySelectorAll('main button, main a, header button, header a')) {
              const box = b.getBoundingClientRect();
              if (shown(b) && box.height < 55.5) { out.push(`${Math.round(box.height)} px high: ${b.innerText}`); }
              if (shown(b) && (box.right > innerWidth + 1 || box.left < -1)) { out.push(`cut off: ${b.innerText}`); }
            }
            for (const foot of document.querySelectorAll('.step-foot button')) {
              if (foot.getBoundingClientRect().bottom > innerHeight + 1) { out.push(`below the screen: ${foot.innerText}`); }
            }
            return read > 3 ? out : [...out, 'nothing to read'];
            """;

    @TempDir
    static Path temporary;

    private static PhonePage page;

    @BeforeAll
    static void start() throws Exception {
        page = PhonePage.of(
                        temporary,
                        Asked.parse(PhonePage.OUTING.replace(
                                "\"log\":[]",
                                "\"guard\":{\"leaveBy\":\"17:30\",\"packingMinutes\":3},\"log\":[{\"frame\":1,\"third\":9,"
                                        + "\"openedAt\":\"2027-01-02T08:30:00Z\",\"openSeconds\":8,\"offStops\":0,"
                                        + "\"marks\":[],\"tags\":[\"gust\"],\"verdict\":\"keep\"}]")))
                .offline();
        // a second view, with the axis of what was measured
        page.open("#there/view-1/new");
        CoastFrames.choose(
                page.browser(), CoastFrames.write(Files.createDirectory(temporary.resolve("frames")), 16, 500));
        page.browser().until("document.querySelectorAll('.axis-drawing image').length > 2");
    }

    @AfterAll
    static void end() {
        if (page != null) {
            page.close();
        }
    }

    @ParameterizedTest
    @CsvSource({"390,844,day", "390,844,night", "320,568,day", "320,568,night", "844,390,day", "844,390,night"})
    void everythingIsReadAndReachedByThumb(int width, int height, String light) {
        Browser browser = page.browser();
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setDeviceMetricsOverride",
                        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", true));
        browser.driver().executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
        page.open("#kit");
        browser.light(light);
        for (String place : PLACES) {
            page.open(place);
            browser.until("document.querySelector('main h1') && !document.querySelector('main > .wait')");
            assertThat((List<?>) browser.run(LOOK))
                    .as("%d × %d, %s, %s", width, height, light, place)
                    .isEmpty();
        }
    }
}
