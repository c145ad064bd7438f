package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** What the aligner says of frames whose making is known: what agrees, what holds them, and when it cannot tell. */
class FrameAlignerTest {

    private static final int W = 64;
    private static final int H = 48;
    private static final float[] EVERYWHERE = filled(1);

    private static float[] filled(float value) {
        float[] plane = new float[W * H];
        Arrays.fill(plane, value);
        return plane;
    }

    /** Smooth texture about 0.3, seen from {@code dx} and {@code dy} pixels further left and up. */
    private static float[] view(long seed, double dx, double dy) {
        int wide = W + 40;
        int tall = H + 40;
        double[] field = Plain.noise(wide, tall, 1.6, seed);
        float[] frame = new float[W * H];
        for (int p = 0; p < frame.length; p++) {
            int row = p / W;
            frame[p] = (float) (0.3 + Plain.between(field, wide, tall, p % W + 20 - dx, row + 20 - dy) - 0.5);
        }
        return frame;
    }

    private static FrameAligner.Fit fit(float[] reference, float[] frame, float[] weight) {
        FrameAligner aligner = FrameAligner.of(reference, W, H, weight);
        return aligner.align(frame, Placement.HERE, aligner.scratch());
    }

    private static FrameAligner.Fit fit(float[] reference, float[] frame) {
        return fit(reference, frame, EVERYWHERE);
    }

    @Test
    void aSmallShiftIsFound() {
        FrameAligner.Fit fit = fit(view(1, 0, 0), view(1, 2.5, -1.25));
        assertThat(fit.placement().dx()).isCloseTo(2.5, within(0.11));
        assertThat(fit.placement().dy()).isCloseTo(-1.25, within(0.11));
        assertThat(fit.placement().angle()).isCloseTo(0, within(0.005));
        assertThat(fit.agreement()).isGreaterThan(0.9);
    }

    /** Two stops less light is the same view. */
    @Test
    void changesOfLightDoNotMatter() {
        float[] dim = view(2, 0, 0);
        for (int p = 0; p < dim.length; p++) {
            dim[p] *= 0.25f;
        }
        FrameAligner.Fit fit = fit(view(2, 0, 0), dim);
        assertThat(fit.placement().dx()).isCloseTo(0, within(0.01));
        assertThat(fit.placement().dy()).isCloseTo(0, within(0.01));
        assertThat(fit.agreement()).isGreaterThan(0.99);
    }

    /** Nor does light below black, which noise leaves, nor a frame without any. */
    @Test
    void whatShowsNothingAgreesWithNothing() {
        assertThat(fit(filled(0.3f), filled(0.3f)).agreement()).isZero();
        assertThat(fit(filled(-0.1f), filled(0)).placement()).isEqualTo(Placement.HERE);
        FrameAligner tiny = FrameAligner.of(new float[64], 8, 8, new float[64]);
        Placement start = new Placement(1, 2, 0);
        assertThat(tiny.align(new float[64], start, tiny.scratch())).isEqualTo(new FrameAligner.Fit(start, 0, 0));
    }

    /** The left half stands, the right shows something else: where each place's weight says what counts. */
    @Test
    void theAgreementIsTheShareOfTheWeightThatStands() {
        float[] reference = view(3, 0, 0);
        float[] frame = view(4, 0, 0);
        float[] left = filled(0);
        float[] mostlyRight = filled(1);
        for (int p = 0; p < frame.length; p++) {
            if (p % W < W / 2) {
                frame[p] = reference[p];
                mostlyRight[p] = 0.1f;
                left[p] = p % W < W / 2 - 14 ? 1 : 0; // away from what both share through the high pass
            }
        }
        assertThat(fit(reference, frame, left).agreement()).isGreaterThan(0.9);
        // half of it, and by chance some of the rest; then 0.1 of 1.1, and some by chance
        assertThat(fit(reference, frame).agreement()).isBetween(0.4, 0.75);
        assertThat(fit(reference, frame, mostlyRight).agreement()).isBetween(0.06, 0.25);
    }

    @Test
    void whatHasNoWeightDoesNotPull() {
        float[] frame = view(5, 1.5, 0.5);
        float[] other = view(5, -3, 2);
        float[] weight = filled(1);
        for (int p = 0; p < frame.length; p++) {
            if (p % W >= 40) {
                frame[p] = other[p];
                weight[p] = 0;
            }
        }
        Placement found = fit(view(5, 0, 0), frame, weight).placement();
        assertThat(found.dx()).isCloseTo(1.5, within(0.15));
        assertThat(found.dy()).isCloseTo(0.5, within(0.15));
    }

    /**
     * Two frames of noise alone: the slopes are those of noise, but the steeper half of the places is used. Squared slopes
     * in the plane are distributed exponentially, whose upper half has 1 + ln 2 = 1.69 times the mean.
     */
    @Test
    void noiseHoldsAsNoiseDoes() {
        double sum = 0;
        for (int k = 0; k < 6; k++) {
            float[] one = filled(0.3f);
            float[] other = filled(0.3f);
            Dice dice = new Dice(60 + k);
            for (int p = 0; p < one.length; p++) {
                one[p] += (float) (0.02 * dice.normal());
                other[p] += (float) (0.02 * dice.normal());
            }
            sum += fit(one, other, filled(0.5f)).hold() / 6;
        }
        assertThat(sum).isCloseTo(1 + Math.log(2), within(0.4));
    }

    /** Stripes hold a frame across, not along: no more than the noise on them does, whichever way they run. */
    @Test
    void stripesDoNotHold() {
        for (double degrees : new double[] {0, 30, 45, 90, 120}) {
            double towards = Math.toRadians(degrees);
            float[] one = new float[W * H];
            float[] other = new float[W * H];
            float[] crossed = new float[W * H];
            float[] again = new float[W * H];
            Dice dice = new Dice(9);
            for (int p = 0; p < one.length; p++) {
                int column = p % W;
                int row = p / W;
                double across = Math.cos(towards) * column + Math.sin(towards) * row;
                double along = Math.cos(towards) * row - Math.sin(towards) * column;
                double first = 0.005 * dice.normal();
                double second = 0.005 * dice.normal();
                one[p] = (float) (0.3 + 0.06 * Math.sin(0.4 * across) + first);
                other[p] = (float) (0.3 + 0.06 * Math.sin(0.4 * across) + second);
                crossed[p] = (float) (0.3 + 0.06 * Math.sin(0.4 * across) + 0.06 * Math.sin(0.4 * along) + first);
                again[p] = (float) (0.3 + 0.06 * Math.sin(0.4 * across) + 0.06 * Math.sin(0.4 * along) + second);
            }
            assertThat(fit(one, other).hold()).as("%s°", degrees).isLessThan(5);
            assertThat(fit(crossed, again).hold()).as("%s°", degrees).isGreaterThan(40);
        }
    }

    /** Three tenths of the width are the farthest. */
    @Test
    void fartherThanTheSearchReachesNothingIsTold() {
        FrameAligner aligner = FrameAligner.of(view(6, 0, 0), W, H, EVERYWHERE);
        for (Placement far : new Placement[] {new Placement(24, 0, 0), new Placement(0, 24, 0)}) {
            assertThat(aligner.align(view(6, 0, 0), far, aligner.scratch())).isEqualTo(new FrameAligner.Fit(far, 0, 0));
        }
        Placement near = new Placement(8, -6, 0);
        FrameAligner.Fit found = aligner.align(view(6, 8.5, -6.5), near, aligner.scratch());
        assertThat(found.placement().dx()).isCloseTo(8.5, within(0.15));
        assertThat(found.placement().dy()).isCloseTo(-6.5, within(0.15));
    }
}
