package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The curve beyond the clip against its two laws, written out: V ∝ 1/T at once from the mean of V·b over the longest
 * blocks, and a slope that goes from the measured one to 1 in even steps of ln T over three octaves; the likely value is
 * their geometric mean (both tend to G. I. Taylor's 1/T, 1922). The second is summed numerically here.
 */
class ClipCurveTest {

    private static final double SPACING = 0.1;

    /** Twelve seconds of pixels that forget at once, ten of such as remember for three. */
    private final Variogram restless = Variogram.of(series(120, 0), 0);

    private final Variogram slow = Variogram.of(series(100, 3), 0);

    private static ClipCurve calm(Variogram variogram) {
        return ClipCurve.of(variogram, false, Crests.NONE);
    }

    private static ClipCurve calm(int frames, double tau) {
        return calm(Variogram.of(series(frames, tau), 0));
    }

    /** Pixels of their own, each frame by exp(−s/τ) like the one before. */
    private static PixelSeries series(int count, double tau) {
        Dice dice = new Dice(41);
        int pixels = 1500;
        double keep = tau == 0 ? 0 : Math.exp(-SPACING / tau);
        float[][] frames = new float[count][pixels];
        double[] times = new double[count];
        int[] at = new int[pixels];
        for (int p = 0; p < pixels; p++) {
            at[p] = p;
            double x = dice.normal();
            for (int i = 0; i < count; i++) {
                times[i] = SPACING * i;
                x = i == 0 ? x : keep * x + Math.sqrt(1 - keep * keep) * dice.normal();
                frames[i][p] = (float) (0.3 + 0.05 * x);
            }
        }
        return PixelSeries.of(frames, times, at);
    }

    /** −d ln V / d ln b by the textbook's sums of least squares, blocks of a third of the longest and more. */
    private static double slope(Variogram v) {
        ClipCurve curve = calm(v);
        double s = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (int k = 1; k < v.size(); k++) {
            if (v.blockSeconds(k) >= v.blockSeconds(v.size() - 1) / 3) {
                double x = Math.log(v.blockSeconds(k));
                double y = Math.log(curve.variance(v.blockSeconds(k)));
                s++;
                sx += x;
                sy += y;
                sxx += x * x;
                sxy += x * y;
            }
        }
        return -(s * sxy - sx * sy) / (s * sxx - sx * sx);
    }

    /** Mean of V·b over blocks of three quarters of the longest and more. */
    private static double tail(Variogram v) {
        ClipCurve curve = calm(v);
        double sum = 0;
        int count = 0;
        for (int k = 0; k < v.size(); k++) {
            if (v.blockSeconds(k) >= 0.75 * v.blockSeconds(v.size() - 1) - 1e-9) {
                sum += curve.variance(v.blockSeconds(k)) * v.blockSeconds(k);
                count++;
            }
        }
        return sum / count;
    }

    /** Likeness of neighbouring frames: V of the mean of two over V of one is (1 + ρ)/2. */
    private static double neighbours(Variogram v) {
        return 2 * calm(v).variance(v.blockSeconds(1)) / calm(v).varianceAtOnce() - 1;
    }

    private static double fast(Variogram v, double seconds) {
        return tail(v) / seconds;
    }

    private static double relaxing(Variogram v, double seconds) {
        double longest = v.blockSeconds(v.size() - 1);
        double p = Math.max(0.25, Math.min(1, slope(v)));
        double far = Math.log(seconds / longest);
        int steps = 20_000;
        double fall = 0;
        for (int i = 0; i < steps; i++) {
            double x = far * (i + 0.5) / steps;
            fall += (p + (1 - p) * Math.min(1, x / Math.log(8))) * far / steps;
        }
        return tail(v) / longest * Math.exp(-fall);
    }

    @Test
    void beyondTheClipBothLawsRule() {
        for (Variogram v : new Variogram[] {restless, slow}) {
            ClipCurve curve = calm(v);
            assertThat(curve.slopeAtEnd()).isCloseTo(slope(v), within(1e-9));
            for (double seconds : new double[] {5, 20, 60, 960}) {
                double likely = Math.sqrt(fast(v, seconds) * relaxing(v, seconds));
                assertThat(curve.variance(seconds) / likely).isCloseTo(1, within(1e-4));
            }
        }
        // three seconds of memory in ten of clip: far from the slope of 1, which it reaches beyond
        assertThat(slope(slow)).isBetween(0.25, 0.9);
    }

    /** τ is what makes V(T) go over to V(0)·2τ/T, less what the gaps between frames hide. */
    @Test
    void theMemoryIsWhatTheFarEndTells() {
        for (Variogram v : new Variogram[] {restless, slow}) {
            ClipCurve curve = calm(v);
            double ofFrames = 1e6 * curve.variance(1e6) / (2 * curve.varianceAtOnce());
            assertThat(curve.correlationSeconds())
                    .isCloseTo(ofFrames * Gaps.of(SPACING, neighbours(v)).likely(1e6), within(1e-6 * ofFrames));
        }
        assertThat(calm(slow).correlationSeconds()).isBetween(1.0, 6.0);
    }

    @Test
    void insideTheClipStraightLinesJoinTheBlocks() {
        Variogram v = slow;
        ClipCurve curve = calm(v);
        assertThat(curve.varianceAtOnce() / v.variance(0)).isCloseTo(1, within(0.1));
        assertThat(curve.measuredToSeconds()).isEqualTo(v.blockSeconds(v.size() - 1));
        for (int k = 1; k < v.size(); k++) {
            double from = curve.variance(v.blockSeconds(k - 1));
            double to = curve.variance(v.blockSeconds(k));
            assertThat(to / v.variance(k)).isCloseTo(1, within(0.1));
            double between = 0.25 * v.blockSeconds(k - 1) + 0.75 * v.blockSeconds(k);
            assertThat(curve.variance(between)).isCloseTo(0.25 * from + 0.75 * to, within(1e-12));
        }
        assertThat(curve.octavesBeyond(curve.measuredToSeconds() / 2)).isZero();
        assertThat(curve.octavesBeyond(curve.measuredToSeconds() * 8)).isCloseTo(3, within(1e-12));
        assertThat(curve.at(1).basis()).isEqualTo(Remaining.Basis.MEASURED);
        assertThat(curve.at(10).basis()).isEqualTo(Remaining.Basis.EXTRAPOLATED);
        assertThat(curve.at(0).ratio()).isCloseTo(1, within(1e-12));
    }

    @Test
    void whatIsLeftIsTheRootOfTheVarianceLeft() {
        Variogram v = slow;
        ClipCurve curve = calm(v);
        Gaps gaps = Gaps.of(SPACING, neighbours(v));
        for (double seconds : new double[] {0.5, 3, 30, 300}) {
            double left = curve.variance(seconds) / curve.varianceAtOnce() * gaps.likely(seconds);
            assertThat(curve.at(seconds).ratio()).isCloseTo(Math.sqrt(left), within(1e-9));
        }
    }

    /** Waves that roll on: settled only with three of them in eight seconds of clip or more. */
    @Test
    void onlyWhatFallsAsItMustAndShowsEnoughWavesIsResolved() {
        assertThat(calm(restless).resolved()).isTrue();
        assertThat(calm(slow).resolved()).isFalse();
        assertThat(calm(60, 0).resolved()).isFalse(); // six seconds may lie between two gusts
        assertThat(ClipCurve.of(restless, false, new Crests(0.5, 0, 0, 2)).resolved())
                .isFalse();
        assertThat(ClipCurve.of(restless, false, new Crests(0.5, 0, 0, 5)).resolved())
                .isTrue();
        assertThat(ClipCurve.of(restless, false, new Crests(0.001, 0, 0, 0)).resolved())
                .isTrue();
    }

    @Test
    void framesThatShareNothingAreCoarse() {
        assertThat(calm(restless).coarse()).isTrue();
        assertThat(calm(slow).coarse()).isFalse();
    }

    @Test
    void theRangeWidensWithAllThatIsNotKnown() {
        ClipCurve curve = calm(slow);
        for (double seconds : new double[] {1, 6, 60}) {
            Remaining plain = curve.at(seconds);
            Remaining breaking = ClipCurve.of(slow, true, Crests.NONE).at(seconds);
            Remaining rolling =
                    ClipCurve.of(slow, false, new Crests(0.4, 0, 0, 5)).at(seconds);
            assertThat(breaking.ratio()).isEqualTo(plain.ratio());
            assertThat(breaking.low()).isLessThan(plain.low());
            assertThat(rolling.low()).isLessThan(plain.low());
            assertThat(breaking.high()).isGreaterThanOrEqualTo(plain.high());
            assertThat(rolling.high()).isGreaterThanOrEqualTo(plain.high());
        }
        double before = 0;
        for (double seconds : new double[] {5, 10, 20, 40, 80}) {
            Remaining left = calm(restless).at(seconds);
            double wide = left.high() / left.low();
            assertThat(wide).as("%s s", seconds).isGreaterThan(before);
            before = wide;
        }
    }

    /**
     * Of settled water: √(least law / V₀)/(1 + e) to √(greatest law / V₀)·(1 + e) with e = 0.25 + 0.08 an octave beyond the
     * clip, for four octaves at most (the survey's method, step 5), the lower end less what gaps may hide.
     */
    @Test
    void theRangeOfSettledWaterSpansBothLaws() {
        ClipCurve curve = calm(restless);
        assertThat(curve.resolved()).isTrue();
        double v0 = calm(restless).varianceAtOnce();
        Gaps gaps = Gaps.of(SPACING, neighbours(restless));
        for (double octaves : new double[] {0.5, 2, 6}) {
            double seconds = curve.measuredToSeconds() * Math.pow(2, octaves);
            double wide = 1.25 + 0.08 * Math.min(4, octaves);
            double least = Math.min(fast(restless, seconds), relaxing(restless, seconds));
            double most = Math.max(fast(restless, seconds), relaxing(restless, seconds));
            Remaining left = curve.at(seconds);
            assertThat(left.low() / (Math.sqrt(least / v0 * gaps.least(seconds)) / wide))
                    .isCloseTo(1, within(1e-3));
            assertThat(left.high() / (Math.sqrt(most / v0) * wide)).isCloseTo(1, within(1e-3));
        }
    }

    /** Two seconds cannot tell a minute: no more than a figure to draw with. */
    @Test
    void shortClipsAreNotCarriedFar() {
        ClipCurve two = calm(20, 0.3);
        ClipCurve four = calm(40, 0.3);
        assertThat(two.at(4).basis()).isEqualTo(Remaining.Basis.EXTRAPOLATED);
        assertThat(two.at(60).basis()).isEqualTo(Remaining.Basis.TOO_FAR);
        assertThat(four.at(60).basis()).isEqualTo(Remaining.Basis.EXTRAPOLATED);
        assertThat(two.at(4).ratio() / two.at(4).low())
                .isGreaterThan(1.5 * four.at(8).ratio() / four.at(8).low());
    }

    /** Change that is slow grows with the square of the time watched: twelve of twenty seconds saw a share of 0.6². */
    @Test
    void gustsRaiseTheUpperEnd() {
        double patches = 0.01 * calm(restless).varianceAtOnce();
        Remaining plain = calm(restless).at(6);
        Remaining gusty =
                ClipCurve.of(restless, false, new Crests(0, 0, patches, 0)).at(6);
        double watched = 12 / 20.0;
        // twenty seconds from end to end: a memory of ten, of which a mean over six keeps 2x(1 − x(1 − e^(−1/x)))
        double x = 10 / 6.0;
        double kept = 2 * x * (1 - x * (1 - Math.exp(-1 / x)));
        assertThat(gusty.low()).isEqualTo(plain.low());
        assertThat(gusty.high() * gusty.high() - plain.high() * plain.high())
                .isCloseTo(0.01 * (1 / (watched * watched) - 1) * kept, within(1e-6));
        Variogram long25 = Variogram.of(series(250, 0), 0);
        assertThat(ClipCurve.of(long25, false, new Crests(0, 0, 1, 0)).at(6))
                .isEqualTo(calm(long25).at(6));
    }

    @Test
    void whatNoiseHidesIsNotTold() {
        PixelSeries restless = series(80, 0);
        double v0 = Variogram.of(restless, 0).variance(0);
        // noise eight times the texture: an error of the model is as large as all that is left
        ClipCurve hidden = ClipCurve.of(Variogram.of(restless, v0 * 8 / 9), false, Crests.NONE);
        assertThat(hidden.seen()).isFalse();
        assertThat(hidden.correlationSeconds()).isZero();
        assertThat(hidden.at(0.05).ratio()).isEqualTo(1);
        assertThat(hidden.at(6).ratio()).isCloseTo(Math.sqrt(SPACING / 6), within(1e-9));
        assertThat(hidden.at(6).basis()).isEqualTo(Remaining.Basis.TOO_FAR);
        assertThat(hidden.at(6).low()).isZero();
        assertThat(hidden.at(6).high()).isEqualTo(1);
        assertThat(ClipCurve.of(Variogram.of(restless, v0 / 2), false, Crests.NONE)
                        .seen())
                .isTrue();
        assertThat(ClipCurve.of(Variogram.of(restless, 2 * v0), false, Crests.NONE)
                        .varianceAtOnce())
                .isZero();
    }

    @Test
    void threeFramesTellNoSlope() {
        ClipCurve three = calm(4, 0);
        assertThat(three.slopeAtEnd()).isNaN();
        assertThat(three.measuredToSeconds()).isZero();
        assertThat(three.octavesBeyond(1)).isInfinite();
        assertThat(three.coarse()).isTrue();
        assertThat(three.variance(0.1)).isCloseTo(three.varianceAtOnce(), within(1e-15));
        assertThat(three.variance(1)).isCloseTo(three.varianceAtOnce() * 0.1, within(1e-12));
    }
}
