package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Two or three frames whose textures are drawn with the variance that a fading memory leaves (G. I. Taylor 1922): the same
 * texture each time, turned over in stripes so that no two frames share any of it.
 */
class StillsCurveTest {

    private static final int W = Coast.WIDTH;
    private static final int H = Coast.HEIGHT;
    private static final double MEMORY = 0.5;
    private static final double LIGHT = 0.3;
    private static final double DEVIATION = 0.06;
    private static final double[] TEXTURE = Coast.texture(31);
    private static final double[] STANDING = Coast.texture(32);
    private static final float[] LOWER = lower();

    private static float[] lower() {
        float[] mask = new float[W * H];
        for (int p = W * H / 2; p < mask.length; p++) {
            mask[p] = 1;
        }
        return mask;
    }

    /** Mean 0, deviation 1, four pixels from crest to crest. */
    private static double ripples(int x) {
        return Math.sqrt(2) * Math.sin(Math.PI * x / 2);
    }

    private static double taylor(double seconds) {
        double x = MEMORY / seconds;
        return 2 * x * (1 - x * (1 - Math.exp(-1 / x)));
    }

    /** The upper half stands as it is; below, standing texture of {@code standing} deviations, change, and noise. */
    private static LuminanceFrames frames(double[] seconds, double standing, double noise) {
        Dice dice = new Dice(33);
        return Plain.frames(W, H, seconds.length, 30, (x, y, t) -> {
            int frame = (int) Math.rint(t / 30);
            int p = y * W + x;
            if (y < H / 2) {
                return LIGHT + DEVIATION * STANDING[p] + noise * dice.normal();
            }
            // over stripes of eight pixels: + + + +, + − + −, + + − −
            boolean over = (frame == 1 && x / 8 % 2 == 1) || (frame == 2 && x / 8 % 4 > 1);
            double change = Math.sqrt(taylor(seconds[frame])) * TEXTURE[p] * (over ? -1 : 1);
            return LIGHT + DEVIATION * (change + standing * ripples(x)) + noise * dice.normal();
        });
    }

    private static StillsCurve curve(double[] seconds, double standing, double noise) {
        return StillsCurve.of(frames(seconds, standing, noise), Stills.of(seconds), LOWER);
    }

    @Test
    void theMemoryIsThatOfTheTimesTaken() {
        for (double[] seconds : new double[][] {{0.1, 6}, {6, 0.1}, {0.1, 1, 6}, {1, 8, 4}}) {
            StillsCurve curve = curve(seconds, 0, 0);
            assertThat(curve.correlationSeconds()).isCloseTo(MEMORY, within(0.1 * MEMORY));
            for (double time : new double[] {0.05, 0.5, 3, 60}) {
                Remaining left = curve.at(time);
                assertThat(left.ratio()).isCloseTo(Math.sqrt(taylor(time)), within(0.06 * left.ratio()));
                assertThat(curve.variance(time) / curve.varianceAtOnce())
                        .isCloseTo(left.ratio() * left.ratio(), within(1e-9));
            }
            assertThat(curve.variance(0)).isEqualTo(curve.varianceAtOnce());
            assertThat(curve.seen()).isTrue();
            assertThat(curve.coarse()).isFalse();
        }
    }

    /** What stands is in both frames and in neither's change; what is outside the mask is in neither. */
    @Test
    void whatStandsIsTakenOut() {
        double[] seconds = {0.1, 2};
        StillsCurve curve = curve(seconds, 0.4, 0);
        assertThat(curve.correlationSeconds()).isCloseTo(MEMORY, within(0.25 * MEMORY));
        // ripples of four pixels are far finer than the shading that is taken out
        double truth = 0.16 * DEVIATION * DEVIATION;
        double found = StillsCurve.standingVariance(frames(seconds, 0.4, 0), Stills.of(seconds), LOWER);
        assertThat(found).isCloseTo(truth, within(0.15 * truth));
        assertThat(StillsCurve.standingVariance(frames(seconds, 0.4, 0), Stills.of(seconds), new float[W * H]))
                .isZero();
    }

    /** As much noise as the long exposure leaves of the texture would pass for twice its variance. */
    @Test
    void noiseIsTakenOff() {
        double noise = DEVIATION * Math.sqrt(taylor(6));
        double found = curve(new double[] {0.1, 6}, 0, noise).correlationSeconds();
        assertThat(found).isCloseTo(MEMORY, within(0.4 * MEMORY));
        double[] seconds = {0.1, 6};
        Dice dice = new Dice(34);
        LuminanceFrames still = Plain.frames(W, H, 2, 30, (x, y, t) -> LIGHT + 0.01 * dice.normal());
        StillsCurve none = StillsCurve.of(still, Stills.of(seconds), LOWER);
        assertThat(none.varianceAtOnce()).isLessThan(0.5 * 1e-4);
    }

    @Test
    void withoutChangeNothingIsTold() {
        LuminanceFrames still = Plain.frames(W, H, 2, 30, (x, y, t) -> LIGHT + DEVIATION * STANDING[y * W + x]);
        StillsCurve none = StillsCurve.of(still, Stills.of(new double[] {0.1, 6}), LOWER);
        assertThat(none.seen()).isFalse();
        assertThat(none.correlationSeconds()).isZero();
        Remaining left = none.at(2);
        assertThat(left.basis()).isEqualTo(Remaining.Basis.TOO_FAR);
        assertThat(left.low()).isZero();
        assertThat(left.high()).isEqualTo(1);
        assertThat(left.ratio()).isCloseTo(Math.sqrt(none.variance(2) / none.varianceAtOnce()), within(1e-12));
    }

    @Test
    void theRangeWidensAwayFromTheTimesTaken() {
        StillsCurve curve = curve(new double[] {0.1, 6}, 0, 0);
        assertThat(curve.measuredToSeconds()).isEqualTo(6);
        assertThat(curve.resolved()).isTrue();
        assertThat(curve(new double[] {0.1, 1}, 0, 0).resolved()).isFalse(); // half a second is more than a third of it
        for (double near : new double[] {0.1, 0.13, 4.5, 6, 8}) {
            assertThat(curve.at(near).basis()).as("%s s", near).isEqualTo(Remaining.Basis.MEASURED);
        }
        for (double far : new double[] {0.02, 0.2, 1, 60}) {
            assertThat(curve.at(far).basis()).as("%s s", far).isEqualTo(Remaining.Basis.EXTRAPOLATED);
        }
        double before = 0;
        for (double time : new double[] {6, 12, 24, 48, 96}) {
            Remaining left = curve.at(time);
            double below = left.ratio() / left.low();
            assertThat(below).isGreaterThan(Math.max(1.3, before));
            assertThat(left.high() / left.ratio()).isGreaterThan(1.3);
            before = below;
        }
        assertThat(curve.at(6).ratio() / curve.at(6).low())
                .isLessThan(curve.at(0.8).ratio() / curve.at(0.8).low());
        // the least is what follows 1/T at once from the longest time: with the same widening as above
        Remaining far = curve.at(96);
        double fastest = Math.sqrt(curve.variance(6) / curve.varianceAtOnce() * 6 / 96);
        assertThat(far.low() / fastest).isCloseTo(far.ratio() / far.high(), within(1e-9));
    }
}
