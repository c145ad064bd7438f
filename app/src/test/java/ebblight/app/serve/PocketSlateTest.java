package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import ebblight.app.ask.Asked;
import ebblight.app.card.SlateText;
import ebblight.core.card.Slate;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From the pocket to settings without a clip, and the slate that is photographed before the frames. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketSlateTest {

    @TempDir
    Path temporary;

    /** What a reader that is not ours (ZXing's) finds on the screen. */
    private static String onScreen(byte[] png) throws Exception {
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(png));
        int w = picture.getWidth();
        int h = picture.getHeight();
        int[] pixels = picture.getRGB(0, 0, w, h, null, 0, w);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(w, h, pixels))))
                .getText();
    }

    @ParameterizedTest
    @ValueSource(strings = {"day", "night"})
    void theSlateSaysTimeViewFiltersAndWish(String light) throws Exception {
        try (PhonePage page = PhonePage.of(
                        temporary,
                        Asked.parse(
                                PhonePage.OUTING.replace(
                                        "\"name\":\"Shore\"",
                                        "\"name\":\"Shore – été\",\"third\":9,\"wishes\":{\"flowing-1\":\"silky!\",\"fixed-2\":\"still\"}")))
                .offline()) {
            page.open("#there/view-1/shot/6?time=8s");
            page.browser().light(light);
            page.browser().press("To the test frame");
            page.browser().press("The test frame is right");
            page.browser().press("Slate for the camera");
            page.browser().until("document.querySelector('.slate-code svg')");
            Slate slate = SlateText.read(onScreen(page.browser().picture())).orElseThrow();
            assertThat(Duration.between(slate.time(), Instant.now()).toSeconds())
                    .isBetween(0L, 4L);
            // IANA time zone database, by the JDK
            assertThat(slate.offset())
                    .isEqualTo(ZoneId.of("Europe/Paris").getRules().getOffset(slate.time()));
            assertThat(slate.view()).isEqualTo("Shore – été");
            assertThat(slate.wish()).containsExactly("water=silky!", "rock=still");
            assertThat(slate.filters()).containsExactly("6");
            assertThat(page.browser().faults()).isEmpty();
        }
    }

    @Test
    void settingsComeWithoutAClipAndAreMarkedAsAGuess() throws Exception {
        try (PhonePage page = PhonePage.of(temporary).offline()) {
            page.open("#there");
            assertThat(page.browser().text()).contains("a guess");
            page.browser().press("silky, ");
            page.browser().press("Meter, then the settings");
            page.browser().press("The test frame is right");
            page.browser().until("document.querySelector('.step-nd .value')");
            assertThat(page.browser().text().toLowerCase(java.util.Locale.ROOT))
                    .contains("a guess")
                    .contains("aperture");
            page.browser().press("ND is on");
            page.browser().press("Covered");
            page.browser().press("Count me in");
            page.browser().press("I closed it now");
            page.browser().press("Log, again");
            // the next frame in one tap
            page.browser().key("Count me in");
            assertThat(page.browser().faults()).isEmpty();
        }
    }

    @Test
    void onesOwnBagGoesOnSomebodyElsesPage() throws Exception {
        try (PhonePage page = PhonePage.of(temporary).offline()) {
            page.open("#kit");
            Browser browser = page.browser();
            browser.press("10-stop: in the bag");
            browser.until("document.querySelector('[data-focus=bag-own]').getAttribute('aria-pressed') === 'true'");
            browser.key("10-stop: at home");
            browser.press("Bag of this page");
            browser.key("10-stop: in the bag");
            browser.press("My own bag");
            browser.key("10-stop: at home");
            browser.driver().navigate().refresh();
            browser.key("10-stop: at home");
            assertThat(browser.faults()).isEmpty();
        }
    }
}
