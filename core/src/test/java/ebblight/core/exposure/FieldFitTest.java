package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The fit over the field of a picture against sums that can be worked by hand. */
class FieldFitTest {

    private static final int PARTS = 40;

    private static float[] radii() {
        float[] radius = new float[PARTS];
        for (int i = 0; i < PARTS; i++) {
            radius[i] = (float) Math.sqrt((i + 0.5) / PARTS);
        }
        return radius;
    }

    private static int[] blocks(int count) {
        int[] block = new int[PARTS];
        for (int i = 0; i < PARTS; i++) {
            block[i] = i % count;
        }
        return block;
    }

    /** Radius² here runs evenly from 0 to 1, so its mean is ½: level a + b/2, slope b, middle a. */
    @Property(tries = 40)
    void aFieldThatFollowsTheLawIsFoundExactly(
            @ForAll @DoubleRange(min = -12, max = 0) double a, @ForAll @DoubleRange(min = -2, max = 2) double b) {
        float[] value = new float[PARTS];
        float[] radius = radii();
        for (int i = 0; i < PARTS; i++) {
            value[i] = (float) (a + b * radius[i] * radius[i]);
        }
        FieldFit fit = FieldFit.of(value, radius, blocks(8));
        assertThat(fit.level()).isCloseTo(a + b / 2, within(1e-4));
        assertThat(fit.slope()).isCloseTo(b, within(1e-4));
        assertThat(fit.middle()).isCloseTo(a, within(1e-4));
        assertThat(fit.levelSigma()).isLessThan(1e-4);
        assertThat(fit.slopeSigma()).isLessThan(1e-4);
        assertThat(fit.middleSigma()).isLessThan(1e-4);
    }

    /** Three parts in forty lie far off (a branch that moved): least squares would be drawn 0.45 stop aside. */
    @Test
    void whatMovedBetweenTheFramesCountsLittle() {
        float[] value = new float[PARTS];
        for (int i = 0; i < PARTS; i++) {
            value[i] = (i % 2 == 0 ? 0.01f : -0.01f) - 6;
        }
        value[7] = value[18] = value[30] = 0;
        assertThat(FieldFit.level(value, blocks(4))).isCloseTo(-6, within(0.01));
        FieldFit fit = FieldFit.of(value, radii(), blocks(4));
        assertThat(fit.level()).isCloseTo(-6, within(0.01));
        assertThat(fit.slope()).isCloseTo(0, within(0.02));
    }

    /** Huber's estimate by its definition: residuals, cut at 1.5 σ, add up to nothing (σ from their median, 0.6745). */
    @Test
    void residualsCutAtTheirLimitAddUpToNothing() {
        float[] value = {1, 2, 2, 3, 3, 3, 4, 4, 5, 30};
        double level = FieldFit.level(value, new int[value.length]);
        double[] sizes = new double[value.length];
        for (int i = 0; i < sizes.length; i++) {
            sizes[i] = Math.abs(value[i] - level);
        }
        Arrays.sort(sizes);
        double limit = 1.5 * 0.5 * (sizes[4] + sizes[5]) / 0.6745;
        double sum = 0;
        for (float v : value) {
            sum += Math.max(-limit, Math.min(limit, v - level));
        }
        assertThat(sum).isCloseTo(0, within(0.02));
    }

    /**
     * Blocks at 1, 2 and 3, all parts of a block alike: without one of them the mean is 2.5, 2 or 1.5, and the jackknife
     * gives √(2/3 · (¼ + 0 + ¼)) = 1/√3, the error of the mean of three.
     */
    @Test
    void theErrorIsThatOfTheBlocks() {
        float[] value = new float[30];
        int[] block = new int[30];
        float[] radius = new float[30];
        for (int i = 0; i < 30; i++) {
            block[i] = i % 3;
            value[i] = 1 + i % 3;
            radius[i] = 0.5f;
        }
        FieldFit fit = FieldFit.of(value, radius, block);
        assertThat(fit.level()).isCloseTo(2, within(1e-9));
        assertThat(fit.levelSigma()).isCloseTo(1 / Math.sqrt(3), within(1e-6));
        // all at one radius: no slope can be told, and none is made up
        assertThat(fit.slope()).isZero();
        assertThat(fit.slopeSigma()).isZero();
        assertThat(fit.middle()).isEqualTo(fit.level());
    }

    /** A block number that nothing lies in is no block. */
    @Test
    void emptyBlocksDoNotCount() {
        float[] value = new float[30];
        int[] block = new int[30];
        int[] gaps = new int[30];
        float[] radius = new float[30];
        for (int i = 0; i < 30; i++) {
            block[i] = i % 3;
            gaps[i] = 4 * (i % 3) + 1;
            value[i] = 1 + i % 3;
            radius[i] = i / 30f;
        }
        assertThat(FieldFit.of(value, radius, gaps)).isEqualTo(FieldFit.of(value, radius, block));
    }

    /** From one or two blocks nothing tells how they err together: a tenth of a stop is said, never nothing. */
    @Test
    void twoBlocksTellNoError() {
        FieldFit fit = FieldFit.of(new float[PARTS], radii(), blocks(2));
        assertThat(fit.levelSigma()).isGreaterThan(0.05);
        assertThat(fit.slopeSigma()).isGreaterThan(0.05);
        assertThat(FieldFit.of(new float[PARTS], radii(), blocks(3)).levelSigma())
                .isZero();
    }
}
