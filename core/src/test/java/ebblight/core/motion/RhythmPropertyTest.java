package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Period and lulls against their definitions, sum by sum. */
class RhythmPropertyTest {

    private static final int W = 12;
    private static final int H = 9;
    private static final double SPACING = 0.1;

    /** Waves of one period over trends and a little noise; they rest for a stretch when asked. */
    private static LuminanceFrames waves(
            int frames, double period, double swing, double restFrom, double restTo, long seed) {
        return Plain.frames(W, H, frames, SPACING, (x, y, t) -> {
            boolean rests = t >= restFrom && t < restTo;
            double at = rests ? restFrom : t;
            double chance = Plain.noise(1, 1, 0, seed + x + 131L * y + Math.round(1e6 * t))[0] - 0.5;
            return 0.5
                    + swing * Math.sin(2 * Math.PI * at / period + 0.7 * x + 0.4 * y)
                    + (y % 2 == 0 ? 0.02 : -0.02) * t
                    + (rests ? 0.02 : 0.3) * swing * chance;
        });
    }

    private static float[] mask() {
        float[] mask = new float[W * H];
        Arrays.fill(mask, 1);
        Arrays.fill(mask, 0, W, 0.3f);
        return mask;
    }

    @Property(tries = 12)
    void thePeriodIsTheStrongestLineOfTheSpectrum(
            @ForAll @IntRange(min = 60, max = 160) int count,
            @ForAll @DoubleRange(min = 1.3, max = 2.2) double period,
            @ForAll boolean faint,
            @ForAll @IntRange(min = 0, max = 999) int seed) {
        LuminanceFrames frames = waves(count, period, faint ? 0.003 : 0.1, -1, -1, seed);
        double length = (count - 1) * SPACING;
        int lowest = 10; // two and a half periods in the clip, four frequencies a period
        int highest = (int) Math.floor(4 * length);
        double[] power = new double[highest - lowest + 1];
        for (int p = W; p < W * H; p++) {
            double[] values = withoutTrend(frames, p);
            for (int k = 0; k < power.length; k++) {
                double frequency = (lowest + k) / (4 * length);
                double re = 0;
                double im = 0;
                for (int i = 0; i < count; i++) {
                    re += values[i] * Math.cos(2 * Math.PI * frequency * i * SPACING);
                    im -= values[i] * Math.sin(2 * Math.PI * frequency * i * SPACING);
                }
                power[k] += re * re + im * im;
            }
        }
        int best = 0;
        for (int k = 0; k < power.length; k++) {
            best = power[k] > power[best] ? k : best;
        }
        double[] sorted = power.clone();
        Arrays.sort(sorted);
        double middle = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        boolean clear = best > 1 && best < power.length - 1 && power[best] > 3 * middle;
        double found = Rhythm.of(frames, mask()).periodSeconds();
        assertThat(found).isCloseTo(clear ? 4 * length / (lowest + best) : 0, within(1e-9));
        if (count >= 120) {
            // frequencies stand a quarter of 1 / length apart; half of that for the grid, half for trend and chance
            assertThat(1 / found).isCloseTo(1 / period, within(0.25 / length));
        }
    }

    /** Straight line of least squares by its normal equations. */
    private static double[] withoutTrend(LuminanceFrames frames, int p) {
        int n = frames.count();
        double s = 0;
        double st = 0;
        double sv = 0;
        double stt = 0;
        double stv = 0;
        for (int i = 0; i < n; i++) {
            double v = frames.frame(i)[p];
            s++;
            st += i;
            sv += v;
            stt += (double) i * i;
            stv += i * v;
        }
        double slope = (s * stv - st * sv) / (s * stt - st * st);
        double start = (sv - slope * st) / s;
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
            values[i] = frames.frame(i)[p] - start - slope * i;
        }
        return values;
    }

    @Property(tries = 12)
    void lullsAreWhereLittleChanges(
            @ForAll @IntRange(min = 80, max = 150) int count,
            @ForAll @DoubleRange(min = 1, max = 4) double restFrom,
            @ForAll @IntRange(min = 0, max = 999) int seed) {
        double restTo = restFrom + 2;
        LuminanceFrames frames = waves(count, 1.7, 0.1, restFrom, restTo, seed);
        double[] change = new double[count - 1];
        for (int i = 0; i < change.length; i++) {
            double sum = 0;
            for (int p = W; p < W * H; p++) {
                sum += Math.pow(frames.frame(i + 1)[p] - (double) frames.frame(i)[p], 2);
            }
            change[i] = Math.sqrt(sum / (W * (H - 1)));
        }
        double[] smooth = new double[change.length];
        for (int i = 0; i < change.length; i++) {
            // half a second: two steps to either side of this one, as far as there are any
            smooth[i] = Arrays.stream(change, Math.max(0, i - 2), Math.min(change.length, i + 3))
                    .average()
                    .orElseThrow();
        }
        double[] sorted = smooth.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        double middle = (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
        double limit = (sorted[0] + middle) / 2;
        List<double[]> expected = new ArrayList<>();
        for (int from = 0; from < n; from++) {
            int to = from;
            while (to < n && smooth[to] < limit) {
                to++;
            }
            if (to > from && (to - from) * SPACING >= 0.5 - 1e-9) {
                expected.add(new double[] {from * SPACING, to * SPACING});
            }
            from = Math.max(from, to);
        }
        List<Rhythm.Lull> lulls = Rhythm.of(frames, mask()).lulls();
        assertThat(lulls).hasSameSizeAs(expected);
        for (int k = 0; k < expected.size(); k++) {
            assertThat(lulls.get(k).fromSeconds()).isCloseTo(expected.get(k)[0], within(1e-9));
            assertThat(lulls.get(k).toSeconds()).isCloseTo(expected.get(k)[1], within(1e-9));
        }
        // the rest that was put in is found, to the half second that is smoothed over
        assertThat(lulls).anySatisfy(lull -> assertThat(
                        Math.abs(lull.fromSeconds() - restFrom) + Math.abs(lull.toSeconds() - restTo))
                .isLessThan(1));
    }

    /** Times count from the first frame, whatever clock they came from. */
    @Example
    void theOriginOfTheClockDoesNotMatter() {
        int count = 120;
        LuminanceFrames frames = waves(count, 1.7, 0.1, 3, 5, 7);
        double[] later = new double[count];
        List<byte[]> list = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            later[i] = 64 + SPACING * i;
            byte[] frame = new byte[6 * W * H];
            for (int p = 0; p < W * H; p++) {
                int code = (int) Math.rint(65535 * frames.frame(i)[p]);
                for (int c = 0; c < 3; c++) {
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            list.add(frame);
        }
        Rhythm here = Rhythm.of(frames, mask());
        Rhythm there =
                Rhythm.of(LuminanceFrames.of(Clip.of(W, H, later, list, Clip.Coding.LINEAR16), Work.alone()), mask());
        assertThat(here.lulls()).isNotEmpty();
        assertThat(there.periodSeconds()).isCloseTo(here.periodSeconds(), within(1e-9));
        assertThat(there.lulls()).hasSameSizeAs(here.lulls());
        for (int k = 0; k < here.lulls().size(); k++) {
            assertThat(there.lulls().get(k).fromSeconds())
                    .isCloseTo(here.lulls().get(k).fromSeconds(), within(1e-9));
            assertThat(there.lulls().get(k).toSeconds())
                    .isCloseTo(here.lulls().get(k).toSeconds(), within(1e-9));
        }
    }

    /** A rest at either end of the clip is a lull too. */
    @Example
    void theEndsOfTheClipMayRest() {
        assertThat(Rhythm.of(waves(100, 1.7, 0.1, 7, 10.5, 3), mask()).lulls())
                .anySatisfy(lull -> assertThat(lull.toSeconds()).isCloseTo(9.9, within(1e-9)));
        assertThat(Rhythm.of(waves(100, 1.7, 0.1, -1, 2, 3), mask()).lulls())
                .anySatisfy(lull -> assertThat(lull.fromSeconds()).isZero());
    }

    /** Too few pixels, too few frames, frames too far apart for waves of a second. */
    @Example
    void withTooLittleToGoByThereIsNone() {
        float[] few = new float[W * H];
        Arrays.fill(few, 0, 40, 1);
        assertThat(Rhythm.of(waves(120, 1.7, 0.1, -1, -1, 5), few)).isEqualTo(Rhythm.NONE);
        assertThat(Rhythm.of(waves(11, 1.7, 0.1, -1, -1, 5), mask())).isEqualTo(Rhythm.NONE);
        Plain.Scene slow = (x, y, t) -> 0.5 + 0.1 * Math.sin(2 * Math.PI * t / 5 + 0.7 * x);
        assertThat(Rhythm.of(Plain.frames(W, H, 120, 0.6, slow), mask())).isEqualTo(Rhythm.NONE);
        assertThat(Rhythm.of(Plain.frames(W, H, 120, 0.4, slow), mask()).periodSeconds())
                .isCloseTo(5, within(0.3));
    }

    /** Change of one and a half periods a clip shows side lobes in a spectrum, which are no rhythm of their own. */
    @Example
    void fewerThanTwoAndAHalfPeriodsAreNoRhythm() {
        for (double period : new double[] {3, 4, 5.5}) {
            assertThat(Rhythm.of(waves(60, period, 0.1, -1, -1, 5), mask()).periodSeconds())
                    .as("%s s of 6", period)
                    .isZero();
        }
        // and what swings slowly hides no quicker waves of a third of its swing
        Plain.Scene both = (x, y, t) -> 0.5
                + 0.12 * Math.sin(2 * Math.PI * t / 7 + 0.3 * x)
                + 0.04 * Math.sin(2 * Math.PI * t / 1.7 + 0.7 * x + 0.4 * y);
        assertThat(Rhythm.of(Plain.frames(W, H, 100, SPACING, both), mask()).periodSeconds())
                .isCloseTo(1.7, within(0.1));
    }
}
