package ebblight.core.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The lull and what covers a place, on pictures whose answer follows from how they were drawn. */
class LullTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 24;

    /** Frames of a branch, a bright stripe that stands {@code at[i]} pixels beside its place of rest in frame i. */
    private static Clip branch(double[] at, double[] light) {
        List<byte[]> frames = new ArrayList<>();
        double[] times = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            byte[] frame = new byte[3 * WIDTH * HEIGHT];
            for (int p = 0; p < WIDTH * HEIGHT; p++) {
                double away = (p % WIDTH - WIDTH / 2.0 - at[i]) / 3;
                double v = light[i] * (40 + 120 * StrictMath.exp(-away * away));
                Arrays.fill(frame, 3 * p, 3 * p + 3, (byte) Math.round(v));
            }
            frames.add(frame);
            times[i] = i / 10.0;
        }
        return Clip.of(WIDTH, HEIGHT, times, frames, Clip.Coding.SRGB8);
    }

    private static float[] everywhere() {
        float[] mask = new float[WIDTH * HEIGHT];
        Arrays.fill(mask, 1);
        return mask;
    }

    @Test
    void theLullIsTheFrameInWhichTheBranchIsAtRest() {
        double[] at = {6, 9, 4, -5, -8, -3, 0.2, 5, 8, -7, -9};
        double[] even = new double[at.length];
        Arrays.fill(even, 1);
        assertThat(Lull.of(branch(at, even), everywhere(), Work.alone()).frame())
                .isEqualTo(6);
    }

    @Test
    void passingCloudDoesNotCountAsMovement() {
        double[] at = {6, 9, 4, -5, -8, -3, 0.2, 5, 8, -7, -9};
        double[] light = {1, 1, 1, 1, 1, 1, 0.8, 1, 1, 1, 1};
        assertThat(Lull.of(branch(at, light), everywhere(), Work.alone()).frame())
                .isEqualTo(6);
    }

    /** A street in which something {@code bright} stands in the left half in 3 of 10 frames. */
    private static Covered covered(int passer) {
        List<byte[]> frames = new ArrayList<>();
        double[] times = new double[10];
        for (int i = 0; i < times.length; i++) {
            byte[] frame = new byte[3 * WIDTH * HEIGHT];
            for (int p = 0; p < WIDTH * HEIGHT; p++) {
                int v = 100 + (p * 7 + i * 3) % 3 + (i % 3 == 1 && p % WIDTH < WIDTH / 2 ? passer : 0);
                Arrays.fill(frame, 3 * p, 3 * p + 3, (byte) v);
            }
            frames.add(frame);
            times[i] = i;
        }
        Clip clip = Clip.of(WIDTH, HEIGHT, times, frames, Clip.Coding.SRGB8);
        return Covered.of(clip, everywhere(), Work.alone());
    }

    @Test
    void coveredIsTheShareOfFramesInWhichSomebodyStandsThere() {
        Covered dark = covered(-60);
        assertThat(dark.share()[0]).isCloseTo(0.3f, within(1e-6f));
        assertThat(dark.share()[WIDTH - 1]).isZero();
        assertThat(dark.placesFraction()).isCloseTo(0.5, within(1e-9));
        assertThat(dark.most()).isCloseTo(0.3, within(0.001));
        assertThat(dark.brighter()).isFalse();
        assertThat(covered(80).brighter()).isTrue();
    }

    @Test
    void aBurstGivesTimesFromItsFramesToItsLength() {
        double[] instants = new double[20];
        double[] exposures = new double[20];
        for (int i = 0; i < 20; i++) {
            instants[i] = 0.5 * i;
            exposures[i] = 0.4;
        }
        BurstTime burst = BurstTime.of(instants, exposures);
        assertThat(burst.seconds()).isCloseTo(9.9, within(1e-12));
        assertThat(burst.shortfall(new Taken.Time(9.9, 0))).isEmpty();
        assertThat(burst.shortfall(new Taken.Time(0.4, 0))).isEmpty();
        assertThat(burst.shortfall(new Taken.Time(12, 0))).contains(BurstTime.Shortfall.BURST_TOO_SHORT);
        assertThat(burst.shortfall(new Taken.Time(8, 5))).contains(BurstTime.Shortfall.BURST_TOO_SHORT);
        assertThat(burst.shortfall(new Taken.Time(0.1, 0))).contains(BurstTime.Shortfall.FRAMES_TOO_LONG);
        double[] minutes = {0, 60, 120, 180, 240};
        BurstTime spaced = BurstTime.of(minutes, new double[5]);
        assertThat(spaced.shortfall(new Taken.Time(8, 0))).contains(BurstTime.Shortfall.FRAMES_TOO_SPARSE);
        assertThat(spaced.shortfall(new Taken.Time(240, 0))).isEmpty();
        BurstTime stars = BurstTime.of(minutes, new double[] {59, 59, 59, 59, 59});
        assertThat(stars.shortfall(new Taken.Time(60, 0))).isEmpty();
        assertThat(burst.frames(30)).isEqualTo(60);
        // 2 s are the frames that begin at 0, 0.5, 1 and 1.5 s
        assertThat(burst.untilSeconds(new Taken.Time(2, 0))).isBetween(1.5 + 1e-9, 2.0);
    }
}
