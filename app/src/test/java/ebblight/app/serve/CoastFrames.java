package ebblight.app.serve;

import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;

/** Pictures of the demo's coast as a phone keeps them: each file has the time at which it was taken. */
@SuppressWarnings("NullAway") // the browser fills in what is read
final class CoastFrames {

    private static final int WIDTH = 320;
    private static final double SECONDS_APART = 0.5;

    private CoastFrames() {}

    /** Writes frames half a second apart whose files say they are {@code gapMillis} apart. */
    static List<Path> write(Path folder, int count, long gapMillis) throws IOException {
        View view = Coast.evening().view(WIDTH, Work.alone());
        Sensor sensor = new Sensor(100);
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            byte[] rgb = sensor.srgb8(view.frame(i * SECONDS_APART), i);
            BufferedImage image = new BufferedImage(view.width(), view.height(), BufferedImage.TYPE_INT_RGB);
            for (int p = 0; p < view.width() * view.height(); p++) {
                image.setRGB(
                        p % view.width(),
                        p / view.width(),
                        (rgb[3 * p] & 0xFF) << 16 | (rgb[3 * p + 1] & 0xFF) << 8 | (rgb[3 * p + 2] & 0xFF));
            }
            Path file = folder.resolve(String.format("%03d.png", i));
            ImageIO.write(image, "png", file.toFile());
            Files.setLastModifiedTime(
                    file, FileTime.from(Instant.parse("2027-01-02T08:30:00Z").plusMillis(i * gapMillis)));
            files.add(file);
        }
        return files;
    }

    /** Hands files to the page where it asks for a clip or frames. */
    static void choose(Browser browser, List<Path> files) {
        browser.type(
                "input[aria-label='Clip or frames']",
                files.stream().map(Path::toString).collect(Collectors.joining("\n")));
    }
}
