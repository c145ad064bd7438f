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
import java.util.List;
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
    private static final int SETTLES_MILLIS = 700;
    private static final int[][] SIZES = {{1440, 900}, {1024, 768}, {390, 844}};

    /** A page's name, its address, and the pictures of it that the guide keeps. */
    private static final String[][] PLACES = {
        {"axis", "#there/view-1?time=25s", "1440 390"},
        {"watch", "#there/view-1/shot/1?time=25s", "390"},
        {"steps", "#there/view-1/shot/2?time=25s", "1440"},
        {"level", "#there/view-1/shot/3?time=25s", "390"},
        {"focus", "#there/view-1/shot/4?time=25s", "390"},
        {"test-frame", "#there/view-1/shot/5?time=25s", "390-night"},
        {"nd", "#there/view-1/shot/6?time=25s", "390"},
        {"cover", "#there/view-1/shot/7?time=25s", "390"},
        {"expose", "#there/view-1/shot/8?time=25s", "390"},
        {"judge", "#there/view-1/shot/9?time=25s", "390"},
        {"log", "#there/view-1/log", "1440"},
        {"kit", "#kit", "1440"},
        {"after", "#after", "1440"},
        {"after-sort", "#after/sort?folder=card", "1440"},
        {"after-side", "#after/side?folder=card&a=card/TLG_0103.jpg&b=card/TLG_0104.jpg", "1440"},
        {"after-blend", "#after/blend?frames=burst", "1440"},
        {"after-finish", "#after/finish?picture=stack-10s.tif&drawer=tone", "1440"},
        {"after-write", "#after/write?picture=stack-10s.tif", "1440"},
    };

    /** Nothing is waited for any more. */
    private static final String SETTLED =
            "!document.querySelector('.wait, .after-wait, .mount-wait, .reading, .searching')"
                    + " && !(document.querySelector('.picture-note')?.textContent || '').includes('comes')"
                    + " && !document.body.innerText.includes('Finding the edges')"
                    + " && (!document.querySelector('.tablet') || document.querySelector('.hang, .sheet-note'))"
                    + " && (!document.querySelector('.strip-pieces') || document.querySelector('.strip-pieces [style*=url]'))";

    /** Planned at a real port: the invented coast has no tide of its own. */
    private static final String[][] PLANNED = {{"before", "#before", "1440 390"}};

    private static final String PLAN =
            """
            {"schema":"outing/1","revision":1,"name":"A planned evening","zone":"Europe/Paris",
             "place":{"name":"Saint Malo","at":"48.65,-2.03","station":"nearest"},
             "plan":{"from":"2027-03-20","to":"2027-04-03","minMinutes":20,"exposure":{"from":"30s","to":"2m"},
                     "guard":{"feetMetres":7.5,"marginMetres":0.5}},
             "views":[{"id":"view-1","name":"post","azimuth":290,"altitude":1,"focalMillimetres":35,
                       "hour":{"sunAltitude":[-6,5],"tideDirection":"falling"}}],
             "log":[]}""";

    private final Path to = Path.of(System.getProperty("ebblight.pictures", "."));

    @TempDir
    Path temporary;

    @Test
    void everyPageOfTheDemo() throws Exception {
        take(
                Path.of(System.getProperty("ebblight.demo")),
                PLACES,
                "document.querySelectorAll('.axis-drawing image').length > 3"
                        + " && !document.querySelector('.picture-note').textContent.includes('comes')");
    }

    @Test
    void thePagesOfAPlan() throws Exception {
        Path planned = Files.createDirectories(temporary.resolve("planned"));
        Files.writeString(planned.resolve("outing.json"), PLAN);
        take(planned, PLANNED, "document.querySelector('main').children.length");
    }

    /** Those that the guide keeps; with {@code ebblight.pictures.all} each at every size, by day and at night. */
    private void take(Path outing, String[][] places, String ready) throws Exception {
        Files.createDirectories(to);
        boolean all = Boolean.getBoolean("ebblight.pictures.all");
        try (LocalServer server = LocalServer.start(
                        OutingFolder.open(outing),
                        temporary.resolve("data"),
                        temporary.resolve("cache"),
                        0,
                        Clock.systemUTC(),
                        new TypedPictures());
                Browser browser = new Browser()) {
            browser.size(1440, 900);
            browser.driver().get(server.link().toString());
            browser.run("localStorage.setItem('ebblight-tour', 'seen')");
            browser.driver().navigate().refresh();
            browser.until(ready);
            if (places == PLACES) {
                expose(browser);
            }
            for (int[] size : SIZES) {
                for (String light : new String[] {size[0] < 700 ? "day" : "room", "night"}) {
                    String suffix = size[0] + (light.equals("night") ? "-night" : "");
                    browser.size(size[0], size[1]);
                    browser.light(light);
                    for (String[] place : places) {
                        if (all || List.of(place[2].split(" ")).contains(suffix)) {
                            browser.run("location.hash = arguments[0]", place[1]);
                            browser.until(SETTLED);
                            Thread.sleep(SETTLES_MILLIS);
                            take(browser, to.resolve(place[0] + "-" + suffix + ".jpg"));
                        }
                    }
                }
            }
            assertThat(browser.faults()).isEmpty();
        }
    }

    /** A frame, so that there is something to judge and to log. */
    private static void expose(Browser browser) {
        browser.run("location.hash = '#there/view-1/shot/8?time=25s'");
        browser.press("Count me in");
        browser.press("I closed it now");
        browser.until("document.querySelector('.judge')");
        browser.run("location.hash = '#there/view-1?time=25s'");
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
