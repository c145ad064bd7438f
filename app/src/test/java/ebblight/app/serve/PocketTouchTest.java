package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The whole way on a phone by a finger alone, on two sizes of screen: read, choose, correct, meter, expose, judge, again. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketTouchTest {

    private static final int FRAMES = 16;

    /** Keeps the times of the frames that the engine of the page is asked to measure. */
    private static final String WITNESS =
            """
            const post = Worker.prototype.postMessage;
            Worker.prototype.postMessage = function (message, ...more) {
              const asked = message.answer ? JSON.parse(message.answer) : {};
              window.times = asked.schema === 'measure/1' ? asked.frames.timesSeconds : window.times;
              return post.call(this, message, ...more);
            };
            """;

    @TempDir
    Path temporary;

    private static String time(Browser browser) {
        return String.valueOf(browser.run("return document.querySelector('.now .time').dataset.time"));
    }

    @ParameterizedTest
    @CsvSource({"390,844", "320,568"})
    void fromFramesToTheNextFrame(int width, int height) throws Exception {
        String leave = DateTimeFormatter.ofPattern("HH:mm")
                .format(ZonedDateTime.now(ZoneId.of("Europe/Paris")).plusHours(5));
        try (PhonePage page = PhonePage.of(
                        temporary,
                        Asked.parse(PhonePage.OUTING.replace(
                                "\"log\":[]",
                                "\"log\":[],\"guard\":{\"leaveBy\":\"" + leave
                                        + "\",\"packingMinutes\":3,\"water\":\"rising\"}")))
                .offline()) {
            Browser browser = page.browser();
            browser.size(width, height);
            page.open("#there/view-1");
            CoastFrames.choose(
                    browser, CoastFrames.write(Files.createDirectories(temporary.resolve("frames")), FRAMES, 500));
            browser.until("document.querySelector('.axis-page .now .time')");
            browser.until("document.querySelectorAll('.axis-drawing image').length > 2");

            String before = time(browser);
            browser.finger().drag(browser.in(".axis-drawing", 0.7, 0.5), browser.in(".axis-drawing", 0.4, 0.5));
            browser.until("document.querySelector('.now .time').dataset.time !== '" + before + "'");
            browser.until("location.hash.includes('time=')");
            page.wait("requestAnimationFrame(() => requestAnimationFrame(() => done(true)));");
            String dragged = time(browser);
            browser.press("a third of a stop longer");
            browser.until("document.querySelector('.now .time').dataset.time !== '" + dragged + "'");

            browser.press("Correct");
            browser.press("Rock");
            browser.finger().drag(browser.in(".picture", 0.3, 0.9), browser.in(".picture", 0.7, 0.9));
            browser.until("document.querySelectorAll('.picture .stroke-in').length === 1");
            browser.press("Done");

            browser.pressAt(".foot-bar .go");
            browser.press("5, ");
            browser.press("The test frame is right");
            browser.press("ND is on");
            browser.press("Covered");
            assertThat(browser.text()).contains("The water rises");
            browser.hold("Hold: I know the way back", Duration.ofMillis(400));
            browser.key("Hold: I know the way back");
            browser.hold("Hold: I know the way back", Duration.ofMillis(1800));
            // lifting the finger is no press of the key that has come under it
            page.wait("setTimeout(() => done(true), 600);");
            browser.press("Count me in");
            browser.press("I closed it now");
            browser.press("Smoother");
            browser.press("Log, again");
            browser.key("Count me in");
            assertThat(browser.faults()).isEmpty();
        }
    }

    @Test
    void picturesThatDoNotSayWhenAreAskedHowFarApart() throws Exception {
        try (PhonePage page = PhonePage.of(temporary).offline()) {
            Browser browser = page.browser();
            browser.driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WITNESS));
            page.open("#there/view-1");
            CoastFrames.choose(
                    browser, CoastFrames.write(Files.createDirectories(temporary.resolve("frames")), FRAMES, 0));
            browser.until("document.body.innerText.includes('How far apart are these frames?')");
            while (!browser.text().contains("0.5 s")) {
                browser.press("One frame every down");
            }
            browser.press("Read them so");
            browser.until("document.querySelector('.axis-page .now .time')");
            assertThat(browser.text()).contains("as you said");
            assertThat((List<?>) browser.run("return window.times"))
                    .hasSize(FRAMES)
                    .last()
                    .isEqualTo(0.5 * (FRAMES - 1));
            assertThat(browser.faults()).isEmpty();
        }
    }
}
