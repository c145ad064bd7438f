package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The means that drift is measured on against their definition, sum by sum. */
class DriftMeansTest {

    private static final int W = 48;
    private static final int H = 36;
    private static final int FRAMES = 27;

    /** 27 frames make thirteen means of two; the last frame is left. */
    private final LuminanceFrames clip = clip();

    private final float[] weight = weight();
    private final DriftMeans means = DriftMeans.of(clip, weight, Work.alone());

    private static LuminanceFrames clip() {
        double[] field = Plain.noise(2 * W, H, 2, 71);
        return Plain.frames(
                W,
                H,
                FRAMES,
                0.25,
                (x, y, t) -> 0.2 + 0.004 * y + 0.5 * (Plain.between(field, 2 * W, H, x + W / 2.0 - 1.5 * t, y) - 0.5));
    }

    private static float[] weight() {
        float[] weight = new float[W * H];
        for (int p = 0; p < weight.length; p++) {
            weight[p] = p / W < H / 2 ? 1 : p / W < H / 2 + 4 ? 0.3f : 0;
        }
        return weight;
    }

    @Test
    void eachIsTheMeanOfItsFramesAsAShareOfTheLightAround() {
        assertThat(means.count()).isEqualTo(13);
        double[] window = Plain.gaussian(Plain.wide(weight), W, H, 2);
        double[] broad = Plain.gaussian(Plain.wide(weight), W, H, W / 16.0);
        for (int g : new int[] {0, 5, 12}) {
            double[] mean = Plain.mean(clip, 2 * g, 2 * g + 2);
            double[] inside = new double[W * H];
            for (int p = 0; p < inside.length; p++) {
                inside[p] = mean[p] * weight[p];
            }
            double[] around = Plain.gaussian(inside, W, H, W / 16.0);
            double[] share = new double[W * H];
            for (int p = 0; p < share.length; p++) {
                double local = around[p] / (broad[p] + 1e-3);
                share[p] = (mean[p] / (local + 1e-3) - local / (local + 1e-3)) * window[p];
            }
            double[] smooth = Plain.gaussian(share, W, H, 1.5);
            for (int p = 0; p < smooth.length; p += 5) {
                assertThat((double) means.planes()[g][p]).isCloseTo(smooth[p], within(2e-5));
            }
            assertThat(means.times()[g]).isCloseTo(0.25 * (2 * g + 0.5), within(1e-12));
        }
        assertThat(means.spacing()).isCloseTo(0.5, within(1e-12));
        assertThat(means.seconds(3, 4)).isCloseTo(2, within(1e-12));
    }

    @Test
    void everySecondPixelOfThePartsIsCompared() {
        List<Integer> expected = new ArrayList<>();
        double[] window = Plain.gaussian(Plain.wide(weight), W, H, 2);
        for (int y = 1; y < H - 1; y += 2) {
            for (int x = 1; x < W - 1; x += 2) {
                if (window[y * W + x] > 0.02) {
                    expected.add(y * W + x);
                }
            }
        }
        assertThat(Arrays.stream(means.samples()).boxed()).containsExactlyElementsOf(expected);
    }

    @Test
    void aChangeIsTheLaterLessTheEarlier() {
        DriftMeans changes = means.changes(3);
        assertThat(changes.count()).isEqualTo(10);
        for (int g = 0; g < 10; g++) {
            assertThat(changes.times()[g]).isCloseTo((means.times()[g] + means.times()[g + 3]) / 2, within(1e-12));
            for (int p = 0; p < W * H; p += 97) {
                assertThat(changes.planes()[g][p]).isEqualTo(means.planes()[g + 3][p] - means.planes()[g][p]);
            }
        }
    }

    /** About four pairs, the first from the first mean, none beyond the last. */
    @Test
    void pairsAreSpreadOverTheClip() {
        assertThat(means.starts(1)).containsExactly(0, 3, 6, 9);
        assertThat(means.starts(12)).containsExactly(0);
        assertThat(means.starts(11)).containsExactly(0, 1);
        assertThat(means.starts(4)).containsExactly(0, 2, 4, 6, 8);
    }

    /** A pattern of chance that goes by whole pixels between means, in a picture that is compared at half its width. */
    @Test
    void theFirstGuessIsTheWayOverTheTime() {
        for (int width : new int[] {64, 240}) {
            int height = 48;
            int wide = width + 60;
            double[] field = Plain.noise(wide, height + 30, 1.5, 72);
            float[][] planes = new float[5][width * height];
            double[] times = {0, 0.5, 1, 1.5, 2};
            for (int i = 0; i < planes.length; i++) {
                for (int p = 0; p < planes[i].length; p++) {
                    int x = p % width + 40 - 4 * i;
                    int y = p / width + 10 + 2 * i;
                    planes[i][p] = (float) (field[y * wide + x] - 0.5);
                }
            }
            float[] ones = new float[width * height];
            Arrays.fill(ones, 1);
            Flow guess = new DriftMeans(planes, times, ones, ones, new int[0], width, height).firstGuess();
            assertThat(guess.u0()).as("%d px wide", width).isCloseTo(8, within(1.5));
            assertThat(guess.v0()).as("%d px wide", width).isCloseTo(-4, within(1.5));
            assertThat(guess.ux()).isZero();
            assertThat(guess.width()).isEqualTo(width);
            assertThat(guess.height()).isEqualTo(height);
        }
    }
}
