package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** One step of the fit against its normal equations written out, and against a drift that is known. */
class DriftFitPropertyTest {

    private static final int W = 60;
    private static final int H = 44;
    private static final int COUNT = 7;
    private static final double RIDGE = 1e-4;
    private static final double STIFFNESS = 0.02;

    /** A smooth field that drifts by {@code u} and {@code v} pixels a second, a little of it new in every mean. */
    private static DriftMeans drifting(double u, double v, double changing, long seed) {
        int wide = W + 60;
        int tall = H + 60;
        double[] field = Plain.noise(wide, tall, 2.5, seed);
        float[][] planes = new float[COUNT][W * H];
        double[] times = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            times[i] = 0.5 * i + 0.03 * (i % 2);
            double[] own = Plain.noise(W, H, 2.5, seed + 1 + i);
            for (int p = 0; p < W * H; p++) {
                double x = p % W + 30 - u * times[i];
                double y = p / W + 30 - v * times[i];
                double carried = Plain.between(field, wide, tall, x, y) - 0.5;
                planes[i][p] = (float) (carried + changing * (own[p] - 0.5));
            }
        }
        float[] window = Plain.narrow(Plain.noise(W, H, 6, seed + 50));
        float[] weight = Plain.narrow(Plain.noise(W, H, 6, seed + 51));
        List<Integer> samples = new ArrayList<>();
        for (int y = 1; y < H - 1; y += 2) {
            for (int x = 1; x < W - 1; x += 2) {
                samples.add(y * W + x);
            }
        }
        int[] at = samples.stream().mapToInt(Integer::intValue).toArray();
        return new DriftMeans(planes, times, window, weight, at, W, H);
    }

    @Property(tries = 8)
    void aStepSolvesTheNormalEquations(
            @ForAll @DoubleRange(min = -3, max = 3) double u,
            @ForAll @DoubleRange(min = -2, max = 2) double v,
            @ForAll @IntRange(min = 1, max = 3) int lag,
            @ForAll boolean affine,
            @ForAll @IntRange(min = 0, max = 999) int seed) {
        DriftMeans means = drifting(u, v, 0.2, seed);
        Flow flow = affine
                ? new Flow(0.8 * u, 0.1, -0.2, 0.8 * v, 0.15, 0.05, W, H)
                : new Flow(0.8 * u, 0, 0, 0.8 * v, 0, 0, W, H);
        Written written = new Written(means, flow, lag, affine ? 6 : 2);
        DriftFit fast = DriftFit.of(means, flow, lag, affine, Work.alone());
        assertThat(fast.gain()).isCloseTo(1 - written.left / written.before, within(1e-5));
        if (!affine) {
            assertThat(fast.standardError()).isCloseTo(written.standardError(), within(1e-4 * written.standardError()));
        }
        double[] step = written.step();
        Flow next = fast.next();
        double[] moved = {
            next.u0() - flow.u0(),
            next.v0() - flow.v0(),
            next.ux() - flow.ux(),
            next.uy() - flow.uy(),
            next.vx() - flow.vx(),
            next.vy() - flow.vy()
        };
        for (int k = 0; k < step.length; k++) {
            assertThat(moved[k]).as("part %d", k).isCloseTo(step[k], within(1e-4));
        }
    }

    /** Gauss and Newton's step from near a known drift ends nearer to it. */
    @Property(tries = 12)
    void aStepGoesTowardsTheDrift(
            @ForAll @DoubleRange(min = -3, max = 3) double u,
            @ForAll @DoubleRange(min = -2, max = 2) double v,
            @ForAll @IntRange(min = 0, max = 999) int seed) {
        Flow near = new Flow(u + 0.8, 0, 0, v - 0.6, 0, 0, W, H);
        Flow next = DriftFit.of(drifting(u, v, 0, seed), near, 1, false, Work.alone())
                .next();
        assertThat(Math.hypot(next.u0() - u, next.v0() - v)).isLessThan(0.35);
    }

    /** The sums over all pairs and samples, one equation a sample: J d = e, each weighted. */
    private static final class Written {
        final int parts;
        final double[][] a;
        final double[] b;
        final Flow flow;
        final double[][] pulls = new double[6 * 6][2];
        double left;
        double before;

        Written(DriftMeans means, Flow flow, int lag, int parts) {
            this.parts = parts;
            this.flow = flow;
            a = new double[parts][parts];
            b = new double[parts];
            for (int start : means.starts(lag)) {
                add(means, start, start + lag);
            }
        }

        private void add(DriftMeans means, int i, int j) {
            double t = means.times()[j] - means.times()[i];
            double[] first = Plain.wide(means.planes()[i]);
            double[] second = Plain.wide(means.planes()[j]);
            double[] weights = Plain.wide(means.weight());
            List<double[]> rows = new ArrayList<>();
            for (int p : means.samples()) {
                int x = p % W;
                int y = p / W;
                double px = x + flow.u(x, y) * t;
                double py = y + flow.v(x, y) * t;
                if (px <= 1 || py <= 1 || px >= W - 2 || py >= H - 2) {
                    continue;
                }
                double error = first[p] - Plain.between(second, W, H, px, py);
                double weight = means.window()[p] * Plain.between(weights, W, H, px, py);
                // mean of the slopes of both pictures
                double right = ((first[p + 1] - first[p - 1]) / 2
                                + (Plain.between(second, W, H, px + 1, py) - Plain.between(second, W, H, px - 1, py))
                                        / 2)
                        / 2;
                double down = ((first[p + W] - first[p - W]) / 2
                                + (Plain.between(second, W, H, px, py + 1) - Plain.between(second, W, H, px, py - 1))
                                        / 2)
                        / 2;
                rows.add(new double[] {x, y, error, weight, right * t, down * t, first[p] - second[p]});
            }
            double sum = rows.stream().mapToDouble(r -> r[3]).sum();
            double squares = rows.stream().mapToDouble(r -> r[3] * r[2] * r[2]).sum();
            double spread = 1.5 * Math.sqrt(squares / sum);
            for (double[] row : rows) {
                // what changes much either way counts little, the same in both sums
                double even = row[3] / (1 + (row[2] * row[2] + row[6] * row[6]) / (2 * spread * spread));
                left += even * row[2] * row[2];
                before += even * row[6] * row[6];
                double q = row[3] / (1 + Math.pow(row[2] / spread, 2));
                double across = (row[0] - W / 2.0) / (W / 2.0);
                double along = (row[1] - H / 2.0) / (W / 2.0);
                double[] equation = {row[4], row[5], row[4] * across, row[4] * along, row[5] * across, row[5] * along};
                int patch = ((int) (row[1] * 6 / W)) * 6 + (int) (row[0] * 6 / W);
                pulls[patch][0] += q * row[4] * row[2];
                pulls[patch][1] += q * row[5] * row[2];
                for (int r = 0; r < parts; r++) {
                    b[r] += q * equation[r] * row[2];
                    for (int c = 0; c < parts; c++) {
                        a[r][c] += q * equation[r] * equation[c];
                    }
                }
            }
        }

        /** The ridge on the even drift, and the pull of the others towards none, are parts of the trace of both drifts. */
        double[] step() {
            double scale = a[0][0] + a[1][1];
            double[] now = {0, 0, flow.ux(), flow.uy(), flow.vx(), flow.vy()};
            double[][] m = new double[parts][];
            double[] right = b.clone();
            for (int r = 0; r < parts; r++) {
                m[r] = a[r].clone();
                m[r][r] += (r < 2 ? RIDGE : STIFFNESS) * scale;
                right[r] -= r < 2 ? 0 : STIFFNESS * scale * now[r];
            }
            return swept(m, right);
        }

        /** Solves by Gauss and Seidel's repeated sweeps: slow, sure for sums of squares. */
        private static double[] swept(double[][] m, double[] right) {
            double[] x = new double[right.length];
            for (int sweep = 0; sweep < 20_000; sweep++) {
                for (int r = 0; r < x.length; r++) {
                    double sum = right[r];
                    for (int c = 0; c < x.length; c++) {
                        sum -= c == r ? 0 : m[r][c] * x[c];
                    }
                    x[r] = sum / m[r][r];
                }
            }
            return x;
        }

        /** Square root of the trace of A⁻¹ (Σ g gᵀ) A⁻¹ n / (n − 1) over the n patches that pull. */
        double standardError() {
            double[][] ridged = {a[0].clone(), a[1].clone()};
            ridged[0][0] *= 1 + RIDGE;
            ridged[1][1] *= 1 + RIDGE;
            double[][] pulling =
                    Arrays.stream(pulls).filter(g -> g[0] != 0 || g[1] != 0).toArray(double[][]::new);
            double sum = 0;
            for (double[] g : pulling) {
                double[] d = swept(ridged, g);
                sum += d[0] * d[0] + d[1] * d[1];
            }
            return Math.sqrt(sum * pulling.length / (pulling.length - 1));
        }
    }
}
