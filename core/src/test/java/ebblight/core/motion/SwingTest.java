package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is told from a curve and from the light itself, the curve given. */
class SwingTest {

    private static final int SIZE = 40;

    /**
     * Slopes of 0.004 across and 0.003 down: gradient² = 25e-6. Variance 100e-6 at once and 50e-6 after the time:
     * √(2 · 50e-6/25e-6) = 2 px.
     */
    @Test
    void shiftIsChangeOverGradient() {
        assertThat(swing(100e-6, 50e-6, new NoiseModel(0, 0)).pixels(3)).isCloseTo(2, within(0.01));
        assertThat(swing(100e-6, 100e-6, new NoiseModel(0, 0)).pixels(3)).isZero();
        assertThat(swing(100e-6, 120e-6, new NoiseModel(0, 0)).pixels(3)).isZero();
    }

    /** Noise of variance σ² makes central differences of σ²/2 in each direction: σ² = 9e-6 leaves 16e-6, 2.5 px. */
    @Test
    void noiseIsNoGradient() {
        assertThat(swing(100e-6, 50e-6, new NoiseModel(0, 9e-6)).pixels(3)).isCloseTo(2.5, within(0.02));
        assertThat(swing(100e-6, 50e-6, new NoiseModel(0, 30e-6)).pixels(3)).isZero();
    }

    @Test
    void outsideThePartNothingSwings() {
        Swing none = Swing.of(slope(), new float[SIZE * SIZE], curve(1, 0), new NoiseModel(0, 0));
        assertThat(none.pixels(3)).isZero();
    }

    /** Foam that deviates by as much as its mean and is there after two seconds; then each thing that speaks against it. */
    @Test
    void breakersAreStrongAndSlow() {
        PixelSeries series = PixelSeries.of(slope().all(), slope().timesSeconds(), new int[] {5, 6, 7});
        double strong = series.mean() * series.mean();
        assertThat(Breakers.look(series, Drawing.curve(strong, 0.9 * strong, true, false, 5)))
                .isTrue();
        assertThat(Breakers.look(series, Drawing.curve(strong, 0.01 * strong, true, false, 5)))
                .isFalse();
        assertThat(Breakers.look(series, Drawing.curve(strong, 0.9 * strong, false, false, 5)))
                .isFalse();
        assertThat(Breakers.look(series, Drawing.curve(strong, 0.9 * strong, true, true, 5)))
                .isFalse();
        assertThat(Breakers.look(series, Drawing.curve(strong, 0.9 * strong, true, false, 1)))
                .isFalse();
        assertThat(Breakers.look(series, Drawing.curve(1e-4 * strong, 0.9e-4 * strong, true, false, 5)))
                .isFalse();
    }

    /** What has no curve of its own falls as 1/T, as anything that has forgotten itself does; what stands does not fall. */
    @Test
    void kindsHaveTheirCurves() {
        SoftRegions coast = Drawing.regions(20, "~~", "##");
        ViewSurvey.Parts parts = new ViewSurvey.Parts(
                slope(),
                new float[SIZE * SIZE],
                new float[3][SIZE * SIZE],
                new NoiseModel(0, 0),
                coast,
                RegionMap.of(coast),
                Optional.empty());
        boolean[] asked = new boolean[2];
        KindCurves curves = KindCurves.of(
                parts,
                (share, unknown) -> {
                    asked[0] = true;
                    asked[1] = unknown;
                    return curve(1, 0.25);
                },
                true);
        assertThat(asked).containsExactly(true, true);
        assertThat(curves.flowing()).isPresent();
        assertThat(curves.swaying()).isEmpty();
        assertThat(curves.variance(Kind.FLOWING.column(), 8)).isEqualTo(0.25);
        assertThat(curves.variance(Kind.SWAYING.column(), 8)).isEqualTo(1 / 8.0);
        assertThat(curves.variance(Kind.SWAYING.column(), 0.001))
                .isCloseTo(1 / slope().spacingSeconds(), within(1e-12));
        assertThat(curves.variance(Kind.FIXED.column(), 8)).isEqualTo(1);
        assertThat(curves.variance(Kind.DRIFTING.column(), 8)).isEqualTo(1);
    }

    @Test
    void fewPixelsMakeNoCurve() {
        KindCurves.Maker maker = (share, unknown) -> curve(1, 0.25);
        float[] share = new float[1000];
        Arrays.fill(share, 0, 50, 1);
        assertThat(maker.ifEnough(share, false)).isEmpty();
        Arrays.fill(share, 0.5f);
        assertThat(maker.ifEnough(share, false)).isEmpty();
        Arrays.fill(share, 0.6f);
        assertThat(maker.ifEnough(share, false)).isPresent();
    }

    private static Swing swing(double atOnce, double then, NoiseModel noise) {
        float[] mask = new float[SIZE * SIZE];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = p % SIZE > 0 && p % SIZE < SIZE - 1 ? 1 : 0;
        }
        return Swing.of(slope(), mask, curve(atOnce, then), noise);
    }

    private static TextureCurve curve(double atOnce, double then) {
        return Drawing.curve(atOnce, then, true, false, 5);
    }

    private static LuminanceFrames slope() {
        return Plain.frames(SIZE, SIZE, 3, 0.5, (x, y, t) -> 0.2 + 0.004 * x + 0.003 * y);
    }
}
