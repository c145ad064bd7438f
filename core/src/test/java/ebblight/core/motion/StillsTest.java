package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Frames of different exposure times against a texture whose memory fades as exp(−s/τ), so that what each time leaves
 * is known in closed form (G. I. Taylor 1922, as in {@link VariogramReferenceTest}).
 */
class StillsTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;
    private static final double STEP = 0.1;
    private static final double MEMORY = 0.5;

    @Test
    void theMemoryIsFoundFromTwoExposures() {
        double[] seconds = {STEP, 6};
        Clip levelled = Stills.levelled(clip(seconds, new double[] {1, 0.6}), seconds);
        float[] mask = new float[WIDTH * HEIGHT];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = p / WIDTH >= HEIGHT / 2 ? 1 : 0;
        }
        LuminanceFrames frames = LuminanceFrames.of(levelled, Work.alone());
        StillsCurve curve = StillsCurve.of(frames, Stills.of(seconds), mask);
        assertThat(curve.seen()).isTrue();
        assertThat(curve.resolved()).isTrue();
        assertThat(curve.correlationSeconds()).isCloseTo(MEMORY, within(0.2 * MEMORY));
        for (double time : new double[] {1, 6, 30}) {
            double x = MEMORY / time;
            double truth = Math.sqrt(2 * x * (1 - x * (1 - Math.exp(-1 / x))));
            assertThat(curve.at(time).ratio()).as("%s s", time).isCloseTo(truth, within(0.12 * truth));
            assertThat(truth).isBetween(curve.at(time).low(), curve.at(time).high());
        }
    }

    @Test
    void aFiltersCastAndDensityAreTakenOut() {
        double[] seconds = {STEP, 6};
        Clip levelled = Stills.levelled(clip(seconds, new double[] {1, 0.6}), seconds);
        float[] first = new float[WIDTH * HEIGHT];
        float[] second = new float[WIDTH * HEIGHT];
        for (int c = 0; c < 3; c++) {
            levelled.channel(0, c, first);
            levelled.channel(1, c, second);
            for (int p = 0; p < WIDTH * HEIGHT / 2; p += 97) { // the upper half stands still
                assertThat(first[p]).isCloseTo(second[p], within(0.02f));
            }
        }
    }

    @Test
    void onlyTimesApartByMoreThanHalfAStopMakeStills() {
        assertThat(Stills.differ(new double[] {1 / 100.0, 1 / 75.0})).isFalse();
        assertThat(Stills.differ(new double[] {1 / 100.0, 1 / 60.0})).isTrue();
        assertThat(Stills.differ(new double[] {0, 0, 1 / 60.0})).isFalse();
    }

    /**
     * Six cells of eight pixels: the long frame shows five of them 1, 1½, 2, 2½ and 3 times as bright as the short one, the
     * sixth is clipped. The median of five is 2; a sixth of nine and more would make it 2¼, black cells less.
     */
    @Test
    void theGainIsTheMedianOfCellsThatAreNeitherWhiteNorBlack() {
        double[] bright = {0.15, 0.97, 0.3, 0.2, 0.1, 0.25};
        assertThat(level(bright, 0.1)).isCloseTo(0.2, within(1e-4));
        double[] dark = {0.15, 0.0005, 0.3, 0.2, 0.1, 0.25};
        assertThat(level(dark, 0.1)).isCloseTo(0.2, within(1e-4));
        // nothing to go by: as it is
        double[] white = {1, 1, 1, 1, 1, 1};
        assertThat(level(white, 0.1)).isCloseTo(0.1, within(1e-4));
        // and more than white is white
        assertThat(level(new double[] {0.9, 0.9, 0.9, 0.9, 0.9, 0.9}, 0.01)).isCloseTo(0.9, within(1e-2));
    }

    /** The light of an even short frame, brought to that of a long one of six cells. */
    private static double level(double[] cells, double light) {
        double[] seconds = {1, 8};
        Clip clip = Plain.clip(24, 16, 2, 30, (x, y, t) -> t > 0 ? cells[y / 8 * 3 + x / 8] : light);
        float[] plane = new float[24 * 16];
        Stills.levelled(clip, seconds).channel(0, 1, plane);
        return plane[100];
    }

    /** A frame whose time is not known is left out, whatever it shows. */
    @Test
    void framesWithoutATimeAreLeftOut() {
        double[] seconds = {0.5, 0, 4, 2};
        Clip clip = Plain.clip(16, 16, 4, 30, (x, y, t) -> 0.1 + 0.05 * (t / 30));
        Clip levelled = Stills.levelled(clip, seconds);
        assertThat(levelled.frames()).isEqualTo(3);
        assertThat(levelled.timeSeconds(1)).isEqualTo(60);
        Stills stills = Stills.of(seconds);
        assertThat(stills.seconds()).containsExactly(0.5, 4, 2);
        assertThat(stills.longest()).isEqualTo(1);
        assertThat(stills.shortest()).isZero();
        assertThat(stills.longestSeconds()).isEqualTo(4);
        assertThat(stills.shortestSeconds()).isEqualTo(0.5);
        assertThat(Stills.of(new double[] {8, 2, 4}).shortest()).isEqualTo(1);
        float[] plane = new float[16 * 16];
        levelled.channel(0, 0, plane);
        assertThat(plane[7]).isCloseTo(0.2f, within(1e-3f)); // the light of the longest
    }

    /** The upper half a standing texture, the lower half one that renews itself; each frame seen through its gain. */
    private static Clip clip(double[] seconds, double[] gain) {
        Dice dice = new Dice(11);
        int n = WIDTH * HEIGHT;
        float[] standing = field(dice);
        float[] moving = field(dice);
        List<byte[]> frames = new ArrayList<>();
        double[] times = new double[seconds.length];
        double keep = Math.exp(-STEP / MEMORY);
        for (int i = 0; i < seconds.length; i++) {
            int steps = (int) Math.rint(seconds[i] / STEP);
            double[] sum = new double[n];
            for (int s = 0; s < steps; s++) {
                float[] fresh = field(dice);
                for (int p = 0; p < n; p++) {
                    moving[p] = (float) (keep * moving[p] + Math.sqrt(1 - keep * keep) * fresh[p]);
                    sum[p] += moving[p];
                }
            }
            byte[] frame = new byte[6 * n];
            for (int p = 0; p < n; p++) {
                double light = 0.3 + 0.06 * (p / WIDTH < HEIGHT / 2 ? standing[p] : sum[p] / steps);
                for (int c = 0; c < 3; c++) {
                    int code = (int) Math.rint(65535 * light * gain[i] * (1 - 0.1 * c * i));
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            frames.add(frame);
            times[i] = 30 * i;
            for (int s = 0; s < 60; s++) { // long enough apart to share nothing
                float[] fresh = field(dice);
                for (int p = 0; p < n; p++) {
                    moving[p] = (float) (keep * moving[p] + Math.sqrt(1 - keep * keep) * fresh[p]);
                }
            }
        }
        return Clip.of(WIDTH, HEIGHT, times, frames, Clip.Coding.LINEAR16);
    }

    /** A smooth random field of standard deviation 1: waves of a few pixels. */
    private static float[] field(Dice dice) {
        float[] field = new float[WIDTH * HEIGHT];
        for (int p = 0; p < field.length; p++) {
            field[p] = (float) dice.normal();
        }
        Blur.gaussian(field, field, new float[field.length], WIDTH, HEIGHT, 1.5);
        for (int p = 0; p < field.length; p++) {
            field[p] *= (float) (2 * 1.5 * Math.sqrt(Math.PI)); // a blur of σ leaves 1/(2σ√π) of the deviation
        }
        return field;
    }
}
