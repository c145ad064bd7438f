package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.TypedPictures;
import ebblight.app.outing.OutingFolder;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of every page for the guide, taken on a demo outing: {@code tools/pictures}. */
@SuppressWarnings("NullAway") // JUnit fills in the folder
@EnabledIfSystemProperty(
        named = "ebblight.pictures",
        matches = ".+",
        disabledReason = "pictures are taken by tools/pictures only")
class PagePicturesTest {

    private static final float QUALITY = 0.7f;
    private static final long MOST_BYTES = 250_000;
    private static final int[][] SIZES = {{1440, 900}, {1024, 768}, {390, 844}};
    private static final String[][] PLACES = {
        {"axis", "#there/view-1?time=25s"},
        {"watch", "#there/view-1/shot/1?time=25s"},
        {"focus", "#there/view-1/shot/4?time=25s"},
        {"test-frame", "#there/view-1/shot/5?time=25s"},
        {"nd", "#there/view-1/shot/6?time=25s"},
        {"expose", "#there/view-1/shot/8?time=25s"},
        {"steps", "#there/view-1/shot/2?time=25s"},
        {"level", "#there/view-1/shot/3?time=25s"},
        {"cover", "#there/view-1/shot/7?time=25s"},
        {"judge", "#there/view-1/shot/9?time=25s"},
        {"log", "#there/view-1/log"},
        {"kit", "#kit"},
        {"before", "#before"},
        {"after", "#after"},
        {"after-sort", "#after/sort?folder=card"},
        {"after-side", "#after/side?folder=card&a=card/TLG_0103.jpg&b=card/TLG_0104.jpg"},
        {"after-blend", "#after/blend?frames=burst"},
        {"after-finish", "#after/finish?picture=stack-10s.tif&drawer=tone"},
        {"after-write", "#after/write?picture=stack-10s.tif"},
    };

    @TempDir
    Path temporary;

    @Test
    void everyPageAtThreeSizesByDayAndAtNight() throws Exception {
        Path to = Files.createDirectories(Path.of(System.getProperty("ebblight.pictures")));
        Path demo = Path.of(System.getProperty("ebblight.demo"));
        try (LocalServer server = LocalServer.start(
                        OutingFolder.open(demo),
                        temporary.resolve("data"),
                        temporary.resolve("cache"),
                        0,
                        Clock.systemUTC(),
                        new TypedPictures());
                Browser browser = new Browser()) {
            browser.size(1440, 900);
            browser.driver().get(server.link().toString());
            browser.run("localStorage.setItem('ebblight-tour', 'seen')");
            browser.until("document.querySelectorAll('.axis-drawing image').length > 3");
            browser.until("!document.querySelector('.picture-note').textContent.includes('comes')");
            for (int[] size : SIZES) {
                for (String light : new String[] {size[0] < 700 ? "day" : "room", "night"}) {
                    for (String[] place : PLACES) {
                        browser.size(size[0], size[1]);
                        browser.light(light);
                        browser.run("location.hash = arguments[0]", place[1]);
                        browser.until("!document.querySelector('.wait, .after-wait, .mount-wait, .reading')");
                        Thread.sleep(700);
                        take(
                                browser,
                                to.resolve(
                                        place[0] + "-" + size[0] + (light.equals("night") ? "-night" : "") + ".jpg"));
                    }
                }
            }
            assertThat(browser.faults()).isEmpty();
        }
    }

    private static void take(Browser browser, Path file) throws IOException {
        BufferedImage seen = ImageIO.read(new ByteArrayInputStream(browser.picture()));
        BufferedImage plain = new BufferedImage(seen.getWidth(), seen.getHeight(), BufferedImage.TYPE_INT_RGB);
        plain.createGraphics().drawImage(seen, 0, 0, null);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam quality = writer.getDefaultWriteParam();
        quality.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        quality.setCompressionQuality(QUALITY);
        try (ImageOutputStream out = ImageIO.createImageOutputStream(Files.newOutputStream(file))) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(plain, null, null), quality);
        }
        assertThat(Files.size(file)).isBetween(2_000L, MOST_BYTES);
    }
}
