package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * The variogram against processes whose variance of a time mean is known in closed form.
 *
 * <p>Source: G. I. Taylor, "Diffusion by continuous movements", Proc. London Math. Soc. s2-20 (1922), 196–212: the
 * variance of a mean over T is (2/T²)·V(0)·∫₀ᵀ (T − s)·ρ(s) ds. For ρ(s) = exp(−s/τ) this is V(0)·2τ/T·(1 − τ/T·(1 −
 * exp(−T/τ))), which tends to V(0)·2τ/T; for values without memory the mean of n of them has V(0)/n.
 *
 * <p>Tolerances: 4000 independent pixels of 12 to 30 s give a scatter below 1.5 % of V at the longest blocks (fewer
 * than ten independent pairs a pixel), so 4 % is beyond three standard deviations.
 */
class VariogramReferenceTest {

    private static final int PIXELS = 4000;
    private static final double MEAN = 0.3;
    private static final double DEVIATION = 0.05;

    @Test
    void theMeanOfValuesWithoutMemoryFallsWithTheirNumber() {
        Variogram variogram = Variogram.of(memory(times(120, 0.1), 0, new Dice(1)), 0);
        double v0 = DEVIATION * DEVIATION;
        assertThat(variogram.variance(0)).isCloseTo(v0, within(0.02 * v0));
        for (int k = 1; k < variogram.size(); k++) {
            double n = variogram.blockSeconds(k) / 0.1;
            double ends = (n - 0.5) / (n * n); // n − 1 whole weights and two halves
            assertThat(variogram.variance(k)).as("block %d", k).isCloseTo(v0 * ends, within(0.04 * v0 * ends));
        }
    }

    @Test
    void noiseIsTakenOff() {
        double noise = DEVIATION * DEVIATION;
        Variogram variogram = Variogram.of(memory(times(120, 0.1), 0, new Dice(2)), noise);
        for (int k = 0; k < variogram.size(); k++) {
            assertThat(variogram.variance(k)).isCloseTo(0, within(0.02 * noise));
        }
        assertThat(ClipCurve.of(variogram, false, Crests.NONE).seen()).isFalse();
    }

    @Test
    void aFadingMemoryFollowsTaylor() {
        double tau = 0.4;
        Variogram variogram = Variogram.of(memory(times(300, 0.05), tau, new Dice(3)), 0);
        for (int k = 1; k < variogram.size(); k++) {
            double taylor = DEVIATION * DEVIATION * taylor(variogram.blockSeconds(k), tau);
            assertThat(variogram.variance(k)).as("block %d", k).isCloseTo(taylor, within(0.04 * taylor));
        }
    }

    @Test
    void unevenTimesAreHeeded() {
        double tau = 0.4;
        double[] times = times(300, 0.05);
        Dice dice = new Dice(4);
        double at = 0;
        for (int i = 0; i < times.length; i++) {
            times[i] = at;
            at += dice.even() < 0.15 ? 0.1 : 0.05; // every seventh frame missing
        }
        Variogram variogram = Variogram.of(memory(times, tau, new Dice(5)), 0);
        for (int k = 4; k < variogram.size(); k++) {
            double taylor = DEVIATION * DEVIATION * taylor(variogram.blockSeconds(k), tau);
            assertThat(variogram.variance(k)).as("block %d", k).isCloseTo(taylor, within(0.04 * taylor));
        }
    }

    @Test
    void theCurveGoesOnAsTaylorSays() {
        double tau = 0.25;
        ClipCurve curve = ClipCurve.of(Variogram.of(memory(times(300, 0.1), tau, new Dice(6)), 0), false, Crests.NONE);
        assertThat(curve.resolved()).isTrue();
        assertThat(curve.correlationSeconds()).isCloseTo(tau, within(0.08 * tau));
        for (double seconds : new double[] {15, 30, 60, 240, 960}) {
            double truth = Math.sqrt(taylor(seconds, tau));
            Remaining remaining = curve.at(seconds);
            assertThat(remaining.ratio()).isCloseTo(truth, within(0.05 * truth));
            assertThat(truth).isBetween(remaining.low(), remaining.high());
            assertThat(remaining.basis()).isEqualTo(Remaining.Basis.EXTRAPOLATED);
        }
    }

    private static double taylor(double seconds, double tau) {
        double x = tau / seconds;
        return 2 * x * (1 - x * (1 - Math.exp(-1 / x)));
    }

    private static double[] times(int frames, double spacing) {
        double[] times = new double[frames];
        for (int i = 0; i < frames; i++) {
            times[i] = i * spacing;
        }
        return times;
    }

    /** Independent pixels, each a first-order autoregression with correlation exp(−s/τ) between its times. */
    static PixelSeries memory(double[] times, double tau, Dice dice) {
        float[][] frames = new float[times.length][PIXELS];
        int[] at = new int[PIXELS];
        for (int p = 0; p < PIXELS; p++) {
            at[p] = p;
            double x = dice.normal();
            for (int i = 0; i < times.length; i++) {
                double keep = tau == 0 || i == 0 ? 0 : Math.exp(-(times[i] - times[i - 1]) / tau);
                x = keep * x + Math.sqrt(1 - keep * keep) * dice.normal();
                frames[i][p] = (float) (MEAN + DEVIATION * x);
            }
        }
        return PixelSeries.of(frames, times, at);
    }
}
