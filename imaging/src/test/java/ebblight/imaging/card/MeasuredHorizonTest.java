package ebblight.imaging.card;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drawn horizons of known tilt, with swell along the edge, waves below, grain, and a headland before some of it. */
class MeasuredHorizonTest {

    private static final int WIDTH = 720;
    private static final int HEIGHT = 480;
    private static final int TRIALS = 40;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path drawn(double degrees, long seed, boolean horizon) throws IOException {
        SplittableRandom dice = new SplittableRandom(seed);
        double row = HEIGHT * (0.35 + 0.3 * dice.nextDouble());
        double phase = 6 * dice.nextDouble();
        double head = WIDTH * (0.05 + 0.2 * dice.nextDouble());
        byte[] rgb = new byte[3 * WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double line = row
                        + Math.tan(Math.toRadians(degrees)) * (x + 0.5 - WIDTH / 2.0)
                        + 0.4 * Math.sin(x / 11.0 + phase);
                double below = horizon ? Math.max(0, Math.min(1, y + 0.5 - line + 0.5)) : 0.5;
                double sky = 170 - 20.0 * y / HEIGHT;
                double sea = 95 + (horizon ? 5 : 15) * Math.sin(y * y / 900.0 + x / 30.0) + (x < head ? -40 : 0);
                double v = sky * (1 - below) + sea * below + 3 * (dice.nextDouble() - 0.5);
                for (int c = 0; c < 3; c++) {
                    rgb[3 * (y * WIDTH + x) + c] = (byte) Math.round(v);
                }
            }
        }
        Path file = folder.resolve("h" + seed + ".jpg");
        JpegWriter.write(
                file,
                CodedPicture.srgb8(WIDTH, HEIGHT, rgb),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "drawn"));
        return file;
    }

    @Test
    void theTiltIsFoundAndItsRangeHoldsIt() throws Exception {
        int found = 0;
        int held = 0;
        double worst = 0;
        for (int k = 0; k < TRIALS; k++) {
            double degrees = -4 + 8.0 * k / (TRIALS - 1);
            Optional<MeasuredHorizon> measured = MeasuredHorizon.of(drawn(degrees, 1000 + k, true));
            if (measured.isPresent()) {
                double off = Math.abs(measured.get().degrees() - degrees);
                found++;
                held += off <= measured.get().rangeDegrees() ? 1 : 0;
                worst = Math.max(worst, off);
            }
        }
        System.out.printf("horizons: %d of %d sure, %d held by their range, worst %.3f°%n", found, TRIALS, held, worst);
        assertThat(found).isGreaterThanOrEqualTo(TRIALS * 9 / 10);
        assertThat(held).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * found));
        assertThat(worst).isLessThan(0.25);
    }

    @Test
    void crestsSideBySideAreNoHorizon() throws Exception {
        assertThat(MeasuredHorizon.of(drawn(1, 99, false))).isEmpty();
    }
}
