package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Five minutes of sea through the phone's camera, which sees a shore whose greatest wash is known. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketSeaWatchTest {

    private static final int WIDTH = 320;
    private static final int HEIGHT = 224;
    private static final int EDGE = 112;
    private static final int GREATEST_ROWS = 48;
    private static final int FRAMES = 60;
    private static final int HELD = 7;

    /** The page's clock runs twenty times as fast, so that five minutes are fifteen seconds. */
    private static final String FASTER =
            """
            const began = Date.now();
            const now = Date.now.bind(Date);
            const later = setTimeout;
            Date.now = () => began + 20 * (now() - began);
            window.setTimeout = (act, millis, ...more) => later(act, millis / 20, ...more);
            """;

    @TempDir
    Path temporary;

    private static int rows(int frame) {
        return frame % 20 > 17 ? GREATEST_ROWS : 2 * (1 + frame * 5 % 7);
    }

    /** A film of the shore as the browser's camera takes it in: YUV4MPEG2; each state stays for a quarter of a second. */
    private Path shore() throws IOException {
        SplittableRandom dice = new SplittableRandom(5);
        byte[] ground = new byte[WIDTH * HEIGHT];
        for (int p = 0; p < ground.length; p++) {
            ground[p] = (byte) (80 + dice.nextInt(30));
        }
        ByteArrayOutputStream film = new ByteArrayOutputStream();
        film.write(("YUV4MPEG2 W" + WIDTH + " H" + HEIGHT + " F30:1 Ip A1:1 C420jpeg\n")
                .getBytes(StandardCharsets.US_ASCII));
        for (int i = 0; i < FRAMES; i++) {
            byte[] grey = ground.clone();
            int[] waves = dice.ints((HEIGHT / 8 + 1) * (WIDTH / 8 + 1), 60, 150).toArray();
            for (int y = 0; y < EDGE + rows(i); y++) {
                for (int x = 0; x < WIDTH; x++) {
                    grey[y * WIDTH + x] = (byte) (y < EDGE ? waves[y / 8 * (WIDTH / 8) + x / 8] : 215);
                }
            }
            byte[] colourless = new byte[WIDTH * HEIGHT / 2];
            Arrays.fill(colourless, (byte) 128);
            for (int k = 0; k < HELD; k++) {
                film.write("FRAME\n".getBytes(StandardCharsets.US_ASCII));
                film.write(grey);
                film.write(colourless);
            }
        }
        Path file = temporary.resolve("shore.y4m");
        Files.write(file, film.toByteArray());
        return file;
    }

    /** A row of a tide table, hours from now. */
    private static String turn(ZonedDateTime now, int hours, int metres, String kind) {
        return "[\"" + now.plusHours(hours).toInstant() + "\"," + metres + ",\"" + kind + "\"]";
    }

    @Test
    void theHighestWashIsDrawnTheTideIsAddedAndTheFramesReadTheBreakers() throws Exception {
        ZonedDateTime now = ZonedDateTime.now(ZoneId.of("Europe/Paris"));
        String leave = DateTimeFormatter.ofPattern("HH:mm").format(now.plusHours(8));
        // a table of its own: at the station the tide hardly rises around its high water, whenever that is
        String table =
                "[" + turn(now, -2, 2, "low") + "," + turn(now, 4, 8, "high") + "," + turn(now, 10, 2, "low") + "]";
        JsonObject outing = Asked.parse(PhonePage.OUTING
                .replace("\"log\":[]", "\"log\":[],\"guard\":{\"leaveBy\":\"" + leave + "\",\"packingMinutes\":3}")
                .replace("\"plan\":{", "\"plan\":{\"table\":" + table + ","));
        try (PhonePage page = PhonePage.of(
                        temporary,
                        outing,
                        "--use-fake-ui-for-media-stream",
                        "--use-fake-device-for-media-stream",
                        "--use-file-for-fake-video-capture=" + shore())
                .offline()) {
            Browser browser = page.browser();
            browser.driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", FASTER));
            page.open("#there/view-1/shot/1");
            browser.press("Watch the sea");
            browser.press("Begin the watch");
            browser.until("document.querySelector('.wash-picture')");
            assertThat(browser.text())
                    .contains("Highest wash of", "By the table the tide", "Sets of larger waves", "turn your back")
                    .doesNotContainIgnoringCase("safe");
            // the lowest place of the line, as a share of the picture's height
            double lowest = ((Number)
                            browser.run(
                                    "const box = document.querySelector('.wash-line').getBBox();"
                                            + "return (box.y + box.height) / document.querySelector('.wash-picture svg').viewBox.baseVal.height"))
                    .doubleValue();
            assertThat(lowest * HEIGHT).isBetween(EDGE + GREATEST_ROWS - 5.0, EDGE + GREATEST_ROWS + 5.0);
            // a cosine has risen by a quarter after a third of its way: 4.5 of 6 m are left, less what the watch takes
            assertThat(browser.text()).containsPattern("the tide rises 4\\.[345] m");
            browser.press("Highest wash above the usual water, by eye up");
            browser.until("document.querySelector('.wash-risen')");
            assertThat(browser.text()).contains("the broken line");
            browser.press("Read the water from it");
            browser.until("document.querySelector('.axis-page .now')");
            assertThat(browser.faults()).isEmpty();
        }
    }
}
