package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** The time of lines against the structure tensor of every mean by its definition, over the whole picture. */
class FlowLinesPropertyTest {

    private static final int W = 46;
    private static final int H = 38;
    private static final double SPACING = 0.05;
    private static final double SIGMA = 3;

    /** Foam that runs to the right and is renewed every half second, so that short times draw it as lines. */
    private static LuminanceFrames foam(int frames, long seed) {
        return Plain.frames(W, H, frames, SPACING, (x, y, t) -> {
            double age = 2 * t + y * 0.37;
            long life = (long) Math.floor(age);
            int travelled = (int) Math.rint(24 * (age - life));
            double spot = Plain.noise(1, 1, 0, seed + 31L * (x - travelled) + 7001L * y + 1_000_003L * life)[0];
            return spot > 0.8 ? 0.9 : 0.2;
        });
    }

    @Property(tries = 3)
    void theScoreIsThatOfTheTensor(
            @ForAll @IntRange(min = 40, max = 90) int count, @ForAll @IntRange(min = 0, max = 999) int seed) {
        LuminanceFrames frames = foam(count, seed);
        float[] mask = new float[W * H];
        for (int p = 0; p < mask.length; p++) {
            int x = p % W;
            int y = p / W;
            mask[p] = x < 3 || x > 30 || y < 16 || y > 33 ? 0 : x > 26 ? 0.4f : 1;
        }
        double longest = Math.min(4, count * SPACING / 2);
        double[] scores = new double[count]; // by the number of frames in the mean; 0 where it is no third of a stop
        int best = 0;
        for (int k = 0; 2 * Math.pow(2, k / 3.0) <= longest / SPACING; k++) {
            int n = (int) Math.rint(2 * Math.pow(2, k / 3.0));
            scores[n] = score(frames, n, mask);
            best = scores[n] > scores[best] ? n : best;
        }
        int from = best;
        int to = best;
        for (int n = 0; n < count; n++) {
            if (scores[n] >= 0.95 * scores[best]) {
                from = Math.min(from, n);
                to = Math.max(to, n);
            }
        }
        FlowLines fast = FlowLines.of(frames, mask, Work.alone());
        assertThat(scores[best]).isGreaterThan(1.02 * score(frames, 1, mask)); // or the scene draws no lines
        assertThat(fast.seconds()).isCloseTo(best * SPACING, within(1e-9));
        assertThat(fast.fromSeconds()).isCloseTo(from * SPACING, within(1e-9));
        assertThat(fast.toSeconds()).isCloseTo(to * SPACING, within(1e-9));
    }

    /** Foam of which nothing is left after half a second cannot draw lines of a second. */
    @Property(tries = 3)
    void linesAreDrawnWithinTheLifeOfTheFoam(@ForAll @IntRange(min = 0, max = 999) int seed) {
        float[] mask = new float[W * H];
        Arrays.fill(mask, 1);
        assertThat(FlowLines.of(foam(80, seed), mask, Work.alone()).seconds()).isBetween(2 * SPACING, 0.75);
    }

    /** Noise that is renewed in every frame has no direction to draw. */
    @Property(tries = 3)
    void noiseDrawsNoLines(@ForAll @IntRange(min = 0, max = 999) int seed) {
        LuminanceFrames frames = Plain.frames(
                W, H, 60, SPACING, (x, y, t) -> Plain.noise(1, 1, 0, seed + x + 977L * y + Math.round(1e7 * t))[0]);
        float[] mask = new float[W * H];
        Arrays.fill(mask, 1);
        assertThat(FlowLines.of(frames, mask, Work.alone())).isEqualTo(FlowLines.NONE);
    }

    /** Up to six exposures of {@code n} frames, from the beginning of the clip to its end. */
    private static double score(LuminanceFrames frames, int n, float[] mask) {
        int moments = Math.max(1, Math.min(6, frames.count() / n));
        double sum = 0;
        for (int m = 0; m < moments; m++) {
            int start = moments == 1 ? 0 : m * (frames.count() - n) / (moments - 1);
            sum += directed(Plain.mean(frames, start, start + n), mask) / moments;
        }
        return sum;
    }

    private static double directed(double[] plane, float[] mask) {
        double[][] tensor = new double[3][plane.length];
        for (int y = 1; y < H - 1; y++) {
            for (int x = 1; x < W - 1; x++) {
                int p = y * W + x;
                double gx = (plane[p + 1] - plane[p - 1]) / 2;
                double gy = (plane[p + W] - plane[p - W]) / 2;
                tensor[0][p] = mask[p] * gx * gx;
                tensor[1][p] = mask[p] * gx * gy;
                tensor[2][p] = mask[p] * gy * gy;
            }
        }
        for (int c = 0; c < 3; c++) {
            tensor[c] = Plain.gaussian(tensor[c], W, H, SIGMA);
        }
        double difference = 0;
        double energy = 0;
        for (int p = 0; p < plane.length; p++) {
            if (mask[p] > 0.5f) {
                // the two eigenvalues of [[xx, xy], [xy, yy]]
                double half = (tensor[0][p] + tensor[2][p]) / 2;
                double root = Math.hypot((tensor[0][p] - tensor[2][p]) / 2, tensor[1][p]);
                difference += (half + root) - (half - root);
                energy += (half + root) + (half - root);
            }
        }
        return difference / energy * Math.pow(energy, 0.25);
    }
}
