package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** A scene that is a formula, seen by a camera that moved by a known shift and turn (by definition of the scene). */
class FrameAlignerReferenceTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;

    /** Tracking error of the method's survey: 0.04 to 0.11 px. */
    private static final double ERROR_PIXELS = 0.11;

    private final double[][] waves = waves();

    @Property(tries = 6)
    void shiftAndTurnAreFoundToATenthOfAPixel(
            @ForAll @DoubleRange(min = -6, max = 6) double dx,
            @ForAll @DoubleRange(min = -6, max = 6) double dy,
            @ForAll @DoubleRange(min = -1, max = 1) double degrees) {
        double angle = Math.toRadians(degrees);
        float[] still = new float[WIDTH * HEIGHT];
        float[] moved = new float[WIDTH * HEIGHT];
        for (int p = 0; p < still.length; p++) {
            double x = p % WIDTH;
            int row = p / WIDTH;
            still[p] = (float) scene(x, row);
            // the moved frame shows at (x, y) what the other shows where the move comes from
            double u = x - (WIDTH - 1) / 2.0 - dx;
            double v = row - (HEIGHT - 1) / 2.0 - dy;
            moved[p] = (float) scene(
                    Math.cos(angle) * u + Math.sin(angle) * v + (WIDTH - 1) / 2.0,
                    -Math.sin(angle) * u + Math.cos(angle) * v + (HEIGHT - 1) / 2.0);
        }
        float[] weight = new float[still.length];
        Arrays.fill(weight, 1);
        FrameAligner aligner = FrameAligner.of(still, WIDTH, HEIGHT, weight);
        FrameAligner.Fit fit = aligner.align(moved, Placement.HERE, aligner.scratch());
        assertThat(fit.agreement()).isGreaterThan(0.9);
        Placing found = Placing.of(fit.placement(), WIDTH, HEIGHT);
        for (int p : new int[] {0, WIDTH - 1, WIDTH * (HEIGHT - 1), WIDTH * HEIGHT - 1, WIDTH * HEIGHT / 2}) {
            double x = p % WIDTH - (WIDTH - 1) / 2.0;
            int row = p / WIDTH;
            double y = row - (HEIGHT - 1) / 2.0;
            double trueX = Math.cos(angle) * x - Math.sin(angle) * y + dx + (WIDTH - 1) / 2.0;
            double trueY = Math.sin(angle) * x + Math.cos(angle) * y + dy + (HEIGHT - 1) / 2.0;
            assertThat(found.xAt(p, WIDTH)).isCloseTo(trueX, within(ERROR_PIXELS));
            assertThat(found.yAt(p, WIDTH)).isCloseTo(trueY, within(ERROR_PIXELS));
        }
    }

    private static double[][] waves() {
        SplittableRandom dice = new SplittableRandom(17);
        double[][] all = new double[24][];
        for (int k = 0; k < all.length; k++) {
            double length = 7 + 40 * dice.nextDouble();
            double towards = 2 * Math.PI * dice.nextDouble();
            all[k] = new double[] {
                2 * Math.PI / length * Math.cos(towards),
                2 * Math.PI / length * Math.sin(towards),
                2 * Math.PI * dice.nextDouble()
            };
        }
        return all;
    }

    private double scene(double x, double y) {
        double sum = 0;
        for (double[] wave : waves) {
            sum += Math.sin(wave[0] * x + wave[1] * y + wave[2]);
        }
        return 0.3 + 0.02 * sum;
    }
}
