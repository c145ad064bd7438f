package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames of a moved tripod: a scene given by a formula, so that its shifted views are exact at any fraction. */
class FrameAlignmentTest {

    private static final int WIDTH = 360;
    private static final int HEIGHT = 240;
    private static final Optional<AlignOn> EVERYTHING = Optional.of(AlignOn.everything());

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** The scene seen by a camera that moved by (dx, dy) pixels and turned by {@code angle} about the middle. */
    private static int[] view(double dx, double dy, double angle) {
        int[] codes = new int[3 * WIDTH * HEIGHT];
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int row = p / WIDTH;
            double x = p % WIDTH - WIDTH / 2.0;
            double y = row - HEIGHT / 2.0;
            double u = c * x - s * y + dx;
            double v = s * x + c * y + dy;
            double value = 0.5
                    + 0.17 * Math.sin(u / 3.1 + 0.4 * Math.sin(v / 17))
                    + 0.15 * Math.sin(v / 4.3 + Math.sin(u / 23))
                    + 0.13 * Math.sin((u + 1.7 * v) / 29);
            for (int k = 0; k < 3; k++) {
                codes[3 * p + k] = (int) Math.round(255 * Math.max(0, Math.min(1, value - 0.02 * k)));
            }
        }
        return codes;
    }

    private StackResult stack(Optional<AlignOn> align) throws Exception {
        StackOptions options = new StackOptions(StackOptions.As.MEAN, Optional.empty(), align, false);
        return Stacker.stack(Inputs.open(List.of(folder), 5, false), options, Work.alone());
    }

    private double errorInside(Optional<AlignOn> align) throws Exception {
        StackResult result = stack(align);
        assertThat(result.frames()).isEqualTo(4);
        int[] still = view(0, 0, 0);
        double squares = 0;
        int count = 0;
        int border = 20;
        for (int y = border; y < HEIGHT - border; y++) {
            for (int i = 3 * (y * WIDTH + border); i < 3 * (y * WIDTH + WIDTH - border); i++) {
                double off = result.picture().code(i) / 257.0 - still[i];
                squares += off * off;
                count++;
            }
        }
        return Math.sqrt(squares / count);
    }

    @Test
    void shiftedAndTurnedFramesAreLaidOverTheFirst() throws Exception {
        double[][] moves = {{0, 0, 0}, {1.4, -0.7, 0}, {-2.3, 3.6, 0.004}, {5.25, 1.5, -0.006}};
        for (int k = 0; k < moves.length; k++) {
            int[] codes = view(moves[k][0], moves[k][1], moves[k][2]);
            TestPictures.write8(folder.resolve("f" + k + ".png"), codes, WIDTH, HEIGHT);
        }
        assertThat(errorInside(Optional.empty())).isGreaterThan(15);
        // A shift off by 1/20 pixel costs 0.7 codes on these slopes of up to 14 codes a pixel (by hand).
        assertThat(errorInside(EVERYTHING)).isLessThan(1);
    }

    @Test
    void aFrameOfAnotherSceneIsLeftOutAndNamed() throws Exception {
        TestPictures.write8(folder.resolve("a.png"), view(0, 0, 0), WIDTH, HEIGHT);
        TestPictures.write8(folder.resolve("b.png"), view(1, 1, 0), WIDTH, HEIGHT);
        int[] other = TestPictures.random(3 * WIDTH * HEIGHT, 255, 9);
        TestPictures.write8(folder.resolve("c.png"), other, WIDTH, HEIGHT);
        StackResult result = stack(EVERYTHING);
        assertThat(result.frames()).isEqualTo(2);
        assertThat(result.skipped()).singleElement().satisfies(s -> {
            assertThat(s.file()).hasFileName("c.png");
            assertThat(s.reason()).contains("could not be laid over");
        });
    }

    /** Two thirds of the picture are a surface that travels to the right, as water and cloud do; the rest stands. */
    @Test
    void whatTravelsDoesNotPullTheFramesWithIt() throws Exception {
        int shore = 160;
        for (int k = 0; k < 4; k++) {
            int[] codes = view(0, 0, 0);
            int[] travelling = view(-0.8 * k, 0, 0);
            System.arraycopy(travelling, 0, codes, 0, 3 * WIDTH * shore);
            TestPictures.write8(folder.resolve("f" + k + ".png"), codes, WIDTH, HEIGHT);
        }
        int w = 90; // the map may be smaller than the picture
        int h = 60;
        float[] fixed = new float[w * h];
        Arrays.fill(fixed, w * (shore * h / HEIGHT + 1), w * h, 1);
        int[] still = view(0, 0, 0);
        double pulled = errorBelow(shore, still, stack(EVERYTHING));
        double held = errorBelow(shore, still, stack(Optional.of(new AlignOn(w, h, fixed))));
        assertThat(pulled).isGreaterThan(4);
        assertThat(held).isLessThan(0.5);
    }

    private static double errorBelow(int row, int[] still, StackResult result) {
        double squares = 0;
        for (int i = 3 * WIDTH * row; i < still.length; i++) {
            double off = result.picture().code(i) / 257.0 - still[i];
            squares += off * off;
        }
        return Math.sqrt(squares / (still.length - 3.0 * WIDTH * row));
    }
}
