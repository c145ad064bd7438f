package ebblight.imaging.card;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shore of stones under an even sky, photographed once well and once with each fault; what is wrong is known. */
class SortReasonsTest {

    private static final int WIDTH = 720;
    private static final int HEIGHT = 480;
    private static final int HORIZON = 190;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private int taken;

    /** Linear light of the scene where the lens looks {@code degrees} askew. */
    private static float light(double x, double y, double degrees) {
        double turned = y - Math.tan(Math.toRadians(degrees)) * (x - WIDTH / 2.0);
        if (turned < HORIZON) {
            return 0.5f;
        }
        return (float) ((0.1 + 0.3 * dice(x / 4, turned / 4)) * (0.25 + dice(x / 30, turned / 30)));
    }

    /** The same number, 0 to 1, for all of a square. */
    private static double dice(double column, double row) {
        long square = Math.round(Math.floor(column)) * 7919 + Math.round(Math.floor(row)) * 104_729;
        return new SplittableRandom(square).nextDouble();
    }

    private Path write(String name, double degrees, int blurFrom, int blur, double veil) throws IOException {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        SplittableRandom dice = new SplittableRandom(taken);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                int reach = x >= blurFrom && y > HORIZON ? blur : 0;
                float sum = 0;
                for (int d = -reach; d <= reach; d++) {
                    sum += light(x + d, y, degrees);
                }
                float v = (float) (sum / (2 * reach + 1) + veil + 0.002 * dice.nextDouble());
                for (int c = 0; c < 3; c++) {
                    picture.plane(c)[y * WIDTH + x] = v;
                }
            }
        }
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(8),
                OptionalDouble.of(11),
                OptionalDouble.of(100),
                OptionalDouble.of(28),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15 + taken / 3, 20 * (taken % 3))),
                1,
                List.of(),
                name);
        taken++;
        Path file = folder.resolve(name + ".jpg");
        JpegWriter.write(file, CodedPicture.of(picture, IccProfile.srgb(), Work.alone()), facts);
        return file;
    }

    private static SortedCard.Frame frame(SortedCard card, Path file) {
        return card.groups().stream()
                .flatMap(g -> g.frames().stream())
                .filter(f -> f.file().equals(file))
                .findFirst()
                .orElseThrow();
    }

    private static String notes(SortedCard card, Path file) {
        return String.join("; ", frame(card, file).notes());
    }

    private static void named(SortedCard card, String word, Path only) {
        for (SortedCard.Group group : card.groups()) {
            for (SortedCard.Frame each : group.frames()) {
                String said = each.file().getFileName() + ": " + notes(card, each.file());
                assertThat(said.contains(word)).as(said).isEqualTo(each.file().equals(only));
            }
        }
    }

    @Test
    void windInOnePartIsToldFromAShakenCamera() throws Exception {
        Path good = write("a-good", 0, WIDTH, 0, 0);
        write("b-good", 0, WIDTH, 0, 0);
        write("b-good-too", 0, WIDTH, 0, 0);
        Path wind = write("c-wind", 0, WIDTH * 3 / 5, 2, 0);
        Path shaken = write("d-shaken", 0, 0, 2, 0);
        SortedCard card = CardSorter.sort(folder, Work.alone());
        assertThat(card.skipped()).isEmpty();
        named(card, "(wind)", wind);
        named(card, "shaken:", shaken);
        assertThat(frame(card, good).rank()).isLessThan(frame(card, wind).rank());
        assertThat(frame(card, wind).rank()).isLessThan(frame(card, shaken).rank());
    }

    @Test
    void strayLightAndATiltAreEachCalledByTheirName() throws Exception {
        write("a-good", 0, WIDTH, 0, 0);
        write("b-good", 0, WIDTH, 0, 0);
        Path veiled = write("c-veiled", 0, WIDTH, 0, 0.05);
        Path tilted = write("d-tilted", 1.5, WIDTH, 0, 0);
        SortedCard card = CardSorter.sort(folder, Work.alone());
        assertThat(card.skipped()).isEmpty();
        named(card, "stray light lifts", veiled);
        named(card, "lower on the right", tilted);
        named(card, "which the stray light explains", veiled);
        // dark stones hold 0.03 and more: a veil of 0.05 lifts them by up to log2(0.08 / 0.03) = 1.4 stops
        assertThat(frame(card, veiled).measured().orElseThrow().veilStops()).isBetween(0.5, 1.5);
        assertThat(frame(card, tilted).measured().orElseThrow().tiltDegrees()).isBetween(1.3, 1.7);
    }
}
