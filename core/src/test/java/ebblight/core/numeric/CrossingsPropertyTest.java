package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Passages through zero against a walk in ten-thousandths of the way, and linear systems against their own sums. */
class CrossingsPropertyTest {

    private static final double TOLERANCE = 1e-6;

    /** Tides and suns are sums of slow waves: several steps to the fastest of them. */
    @Property(tries = 60)
    void everyPassageIsFoundOnce(@ForAll @IntRange(min = 0, max = 100_000) int seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double[] size = dice.doubles(4).toArray();
        double[] turn = dice.doubles(4).toArray();
        double level = dice.nextDouble() - 0.5;
        agrees(
                x -> {
                    double sum = level;
                    for (int k = 0; k < size.length; k++) {
                        sum += size[k] * Math.sin(2 * Math.PI * (x * (k + 1) / 40 + turn[k]));
                    }
                    return sum;
                },
                0,
                60,
                1);
    }

    /** Water that tops a height for less than a step: both passages, and each once. */
    @Property(tries = 200)
    void twoPassagesWithinAStepAreFoundOnce(
            @ForAll @DoubleRange(min = 2, max = 8) double middle,
            @ForAll @DoubleRange(min = 0.05, max = 1.4) double width) {
        agrees(x -> (x - middle) * (x - middle) - width * width / 4, 0, 10, 1);
        agrees(x -> width * width / 4 - (x - middle) * (x - middle), 0, 10, 1);
    }

    private static void agrees(DoubleUnaryOperator f, double from, double to, double step) {
        List<Double> plain = new ArrayList<>();
        int n = 60_000;
        for (int i = 0; i < n; i++) {
            double a = from + (to - from) * i / n;
            double b = from + (to - from) * (i + 1) / n;
            if (f.applyAsDouble(a) >= 0 != f.applyAsDouble(b) >= 0) {
                plain.add(b);
            }
        }
        List<Crossings.Crossing> found = Crossings.of(f, from, to, step, TOLERANCE);
        assertThat(found).hasSameSizeAs(plain);
        for (int i = 0; i < plain.size(); i++) {
            assertThat(found.get(i).at()).isCloseTo(plain.get(i), within(2 * (to - from) / n));
            assertThat(found.get(i).rising()).isEqualTo(f.applyAsDouble(plain.get(i)) >= 0);
        }
    }

    @Property(tries = 60)
    void aSolutionGivesItsRightHandSideBack(
            @ForAll @IntRange(min = 1, max = 6) int n, @ForAll @IntRange(min = 0) int seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double[][] a = new double[n][];
        double[] b = dice.doubles(n).toArray();
        for (int r = 0; r < n; r++) {
            a[r] = dice.doubles(n).toArray();
            a[r][(r + 1) % n] += 3; // far from singular, its largest values off the diagonal
        }
        double[][] used = new double[n][];
        for (int r = 0; r < n; r++) {
            used[r] = a[r].clone();
        }
        double[] x = LeastSquares.solve(used, b.clone());
        for (int r = 0; r < n; r++) {
            double sum = 0;
            for (int c = 0; c < n; c++) {
                sum += a[r][c] * x[c];
            }
            assertThat(sum).isCloseTo(b[r], within(1e-9));
        }
    }
}
