package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Watching the sea on the desk: the tide's rise until the time to leave is added there as on the phone. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class SeaWatchDeskTest {

    @TempDir
    Path temporary;

    @Test
    void theRiseOfATypedTableUntilTheTimeToLeaveIsAdded() throws Exception {
        OpenPages.assumeBrowser();
        ZoneId zone = ZoneId.of("Europe/Paris");
        Instant low = Instant.now().minusSeconds(60).truncatedTo(ChronoUnit.SECONDS);
        // half a cosine from low to high water: past its middle after half the time, 1.5 of 3 m higher
        String table = "[[\"%s\",1.0,\"low\"],[\"%s\",4.0,\"high\"]]".formatted(low, low.plusSeconds(4 * 3600));
        String leave = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT)
                .format(ZonedDateTime.ofInstant(low.plusSeconds(7200), zone));
        Path root = Files.createDirectories(temporary.resolve("outing"));
        Files.writeString(
                root.resolve("outing.json"),
                PhonePage.OUTING
                        .replace("\"guard\":{\"feetMetres\":7.5}", "\"table\":" + table)
                        .replace(
                                "\"log\":[]",
                                "\"log\":[],\"guard\":{\"leaveBy\":\"" + leave + "\",\"packingMinutes\":3}"));
        List<Path> frames = CoastFrames.write(Files.createDirectories(temporary.resolve("frames")), 12, 5000);
        try (OpenPages pages = OpenPages.on(root, temporary)) {
            Browser browser = pages.browser();
            browser.driver().get(pages.server().link().toString());
            pages.open("#there/view-1/shot/1?time=8s");
            browser.press("Watch the sea");
            browser.type(
                    "input[aria-label='Frames of a watch']",
                    frames.stream().map(Path::toString).collect(Collectors.joining("\n")));
            // the desk knows no times of dropped pictures that carry none in their Exif
            browser.until("document.body.innerText.includes('How far apart are these frames?')");
            browser.press("Read them so");
            browser.until("document.querySelector('.wash-picture') || document.querySelector('.sea-watch .fault')");
            assertThat(browser.text()).contains("By the table the tide rises 1.5 m until " + leave);
        }
    }
}
