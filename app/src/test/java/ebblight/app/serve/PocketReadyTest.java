package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.ask.Asked;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How soon the phone page is there, opened from a file without a network: from the start of the navigation until the first
 * screen stands, and until the engine answered its first question. Printed, never judged: {@code tools/phone-ready}.
 */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
@EnabledIfSystemProperty(named = "ebblight.ready", matches = "\\d+", disabledReason = "timed by tools/phone-ready only")
class PocketReadyTest {

    private static final int ROUNDS = Integer.getInteger("ebblight.ready", 1);

    /** The page's own clock counts from the start of the navigation. */
    private static final String WITNESS =
            """
            new MutationObserver((_, seen) => {
              if (document.querySelector('main h1, main h2')) {
                window.shownAt = performance.now();
                seen.disconnect();
                import('ebblight/pocket/reason.js')
                  .then(({ answer }) => answer({ schema: 'guess/1', windMetresPerSecond: 4 }))
                  .then(() => { window.answeredAt = performance.now(); });
              }
            }).observe(document, { subtree: true, childList: true });
            """;

    @TempDir
    Path temporary;

    @ParameterizedTest
    @ValueSource(strings = {"wasm", "script"})
    void thePageIsThereSoon(String way) throws Exception {
        try (PhonePage page = PhonePage.of(temporary, Asked.parse(PhonePage.OUTING))) {
            page.older();
            page.offline();
            page.browser()
                    .driver()
                    .executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WITNESS));
            List<Double> shown = new ArrayList<>();
            List<Double> answered = new ArrayList<>();
            for (int i = 0; i < ROUNDS; i++) {
                page.open(way + ".html", "#there");
                page.browser().until("window.answeredAt");
                shown.add(number(page.browser(), "shownAt"));
                answered.add(number(page.browser(), "answeredAt"));
            }
            assertThat(page.wait("import('ebblight/pocket/reason.js').then(({ way }) => done(way()));"))
                    .isEqualTo(way);
            System.out.printf(
                    "phone-ready %s: screen %s ms, engine %s ms (median; quickest to slowest of %d)%n",
                    way, words(shown), words(answered), ROUNDS);
        }
    }

    private static double number(Browser browser, String name) {
        return ((Number) browser.run("return window." + name)).doubleValue();
    }

    private static String words(List<Double> all) {
        Collections.sort(all);
        return "%.0f (%.0f–%.0f)".formatted(all.get(all.size() / 2), all.get(0), all.get(all.size() - 1));
    }
}
