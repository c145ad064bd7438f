package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;

/**
 * How the drifting parts travel. Means of a twelfth of the clip each, high-passed inside the drifting parts, are laid
 * over each other: first by phase correlation at the shortest lag, then by robust least squares on differences of
 * luminance, the lag doubled as long as the shift stays under 0.3 of the width.
 *
 * @param flow the field, in survey pixels a second
 * @param gain share of the change that the drift explains, at most 1
 * @param relativeError spread of the speed between pairs of means, as a share of the speed
 */
record Drift(Flow flow, double gain, double relativeError) {

    /** Below this the parts may do anything, but they do not drift. */
    private static final double LEAST_GAIN = 0.15;

    private static final int GROUPS = 12;
    private static final int STEPS = 6;
    private static final double FARTHEST = 0.3;
    private static final double AFFINE_MUST_GAIN = 0.05;
    private static final double STIFFNESS = 0.02;

    /** Whether the parts drift visibly. */
    boolean told() {
        return gain > LEAST_GAIN;
    }

    static Drift none(int width, int height) {
        return new Drift(Flow.none(width, height), 0, 1);
    }

    /** The drift of what {@code weight} (0 to 1 a pixel) marks; speeds may differ across it when the clip shows so. */
    static Drift of(LuminanceFrames frames, float[] weight, Work work) {
        Groups groups = Groups.of(frames, weight, work);
        if (groups.planes.length < 2) {
            return none(frames.width(), frames.height());
        }
        Flow start = groups.firstGuess();
        Drift even = groups.ladder(Flow.none(frames.width(), frames.height()), false, work);
        if (start.fastest() * groups.spacing() > 1) {
            Drift fast = groups.ladder(start, false, work);
            if (fast.gain > even.gain) {
                even = fast;
            }
        }
        Drift affine = groups.ladder(even.flow, true, work);
        return affine.gain > even.gain + AFFINE_MUST_GAIN ? affine : even;
    }

    /** Short means of the clip, high-passed, with their times. */
    private record Groups(float[][] planes, double[] times, float[] window, float[] weight, int width, int height) {

        static Groups of(LuminanceFrames frames, float[] weight, Work work) {
            int w = frames.width();
            int h = frames.height();
            int size = Math.max(1, frames.count() / GROUPS);
            int count = frames.count() / size;
            float[] window = new float[w * h];
            float[] broad = new float[w * h];
            float[] scratch = new float[w * h];
            Blur.gaussian(weight, window, scratch, w, h, 2);
            Blur.gaussian(weight, broad, scratch, w, h, w / 16.0);
            float[][] planes = new float[count][];
            double[] times = new double[count];
            work.forEach(count, g -> {
                float[] mean = frames.mean(g * size, (g + 1) * size);
                float[] low = new float[w * h];
                float[] room = new float[w * h];
                for (int p = 0; p < low.length; p++) {
                    low[p] = mean[p] * weight[p];
                }
                Blur.gaussian(low, low, room, w, h, w / 16.0);
                for (int p = 0; p < low.length; p++) {
                    mean[p] = (float) ((mean[p] - low[p] / (broad[p] + 1e-3)) * window[p]);
                }
                Blur.gaussian(mean, mean, room, w, h, 1.5);
                planes[g] = mean;
                double sum = 0;
                for (int i = g * size; i < (g + 1) * size; i++) {
                    sum += frames.timesSeconds()[i];
                }
                times[g] = sum / size;
            });
            return new Groups(planes, times, window, weight, w, h);
        }

        double spacing() {
            return (times[times.length - 1] - times[0]) / (times.length - 1);
        }

        Flow firstGuess() {
            int pairs = Math.min(4, planes.length - 1);
            double[] u = new double[pairs];
            double[] v = new double[pairs];
            for (int k = 0; k < pairs; k++) {
                int i = k * (planes.length - 1) / pairs;
                double[] shift = PhaseCorrelation.shift(planes[i], planes[i + 1], width, height);
                u[k] = shift[0] / (times[i + 1] - times[i]);
                v[k] = shift[1] / (times[i + 1] - times[i]);
            }
            return new Flow(Quantiles.median(u, pairs), 0, 0, Quantiles.median(v, pairs), 0, 0, width, height);
        }

        Drift ladder(Flow start, boolean affine, Work work) {
            Flow flow = start;
            int lag = 1;
            while (true) {
                Fit fit = null;
                for (int step = 0; step < STEPS; step++) {
                    fit = fit(flow, lag, affine, work);
                    flow = fit.flow;
                }
                int next = Math.min(2 * lag, planes.length - 1);
                boolean last = lag == planes.length - 1;
                if (last || flow.fastest() * (times[next] - times[0]) > FARTHEST * width) {
                    Fit end = fit(flow, lag, affine, work);
                    int apart = Math.max(1, Math.min(lag, (planes.length - 1) / 2));
                    return new Drift(flow, end.gain, spread(flow, apart, work));
                }
                lag = next;
            }
        }

        private int[] starts(int lag) {
            int step = Math.max(1, (planes.length - lag) / 4);
            int[] starts = new int[(planes.length - lag + step - 1) / step];
            for (int k = 0; k < starts.length; k++) {
                starts[k] = k * step;
            }
            return starts;
        }

        /** Spread of the speeds that single pairs ask for, as a share of the speed. */
        private double spread(Flow flow, int lag, Work work) {
            int[] starts = starts(lag);
            double speed = Math.sqrt(flow.u0() * flow.u0() + flow.v0() * flow.v0());
            if (starts.length < 2 || speed == 0) {
                return 1;
            }
            double sum = 0;
            for (int start : starts) {
                Fit one = fit(flow, lag, false, work, start);
                double du = one.flow.u0() - flow.u0();
                double dv = one.flow.v0() - flow.v0();
                sum += du * du + dv * dv;
            }
            return Math.min(1, Math.sqrt(sum / starts.length) / speed);
        }

        private record Fit(Flow flow, double gain) {}

        /** One step of least squares over pairs {@code lag} apart; {@code gain} is that of the flow handed in. */
        private Fit fit(Flow flow, int lag, boolean affine, Work work, int... only) {
            int[] starts = only.length > 0 ? only : starts(lag);
            PairSums[] sums = new PairSums[starts.length];
            work.forEach(starts.length, k -> sums[k] = PairSums.of(this, starts[k], lag, flow));
            double[][] a = new double[6][6];
            double[] b = new double[6];
            double left = 0;
            double before = 0;
            for (PairSums pair : sums) {
                left += pair.left;
                before += pair.before;
                for (int r = 0; r < 6; r++) {
                    b[r] += pair.b[r];
                    for (int c = r; c < 6; c++) {
                        a[r][c] += pair.a[r][c];
                        a[c][r] = a[r][c];
                    }
                }
            }
            double scale = a[0][0] + a[3][3];
            double gain = 1 - left / (before + 1e-12);
            if (!(scale > 0)) {
                return new Fit(flow, 0);
            }
            if (!affine) {
                double[][] small = {{a[0][0] + 1e-4 * scale, a[0][3]}, {a[3][0], a[3][3] + 1e-4 * scale}};
                double[] d = LeastSquares.solve(small, new double[] {b[0], b[3]});
                return new Fit(new Flow(flow.u0() + d[0], 0, 0, flow.v0() + d[1], 0, 0, width, height), gain);
            }
            double[] now = {flow.u0(), flow.ux(), flow.uy(), flow.v0(), flow.vx(), flow.vy()};
            for (int r = 0; r < 6; r++) {
                boolean constant = r % 3 == 0;
                a[r][r] += (constant ? 1e-4 : STIFFNESS) * scale;
                b[r] -= constant ? 0 : STIFFNESS * scale * now[r];
            }
            double[] d = LeastSquares.solve(a, b);
            return new Fit(
                    new Flow(
                            now[0] + d[0],
                            now[1] + d[1],
                            now[2] + d[2],
                            now[3] + d[3],
                            now[4] + d[4],
                            now[5] + d[5],
                            width,
                            height),
                    gain);
        }
    }

    /** What one pair of means adds to the normal equations. */
    private record PairSums(double[][] a, double[] b, double left, double before) {

        static PairSums of(Groups groups, int start, int lag, Flow flow) {
            int w = groups.width;
            int h = groups.height;
            double t = groups.times[start + lag] - groups.times[start];
            float[] first = groups.planes[start];
            float[] second = groups.planes[start + lag];
            float[] warped = new float[w * h];
            float[] weight = new float[w * h];
            double sumWeight = 0;
            double sumSquares = 0;
            double before = 0;
            for (int y = 0; y < h; y++) {
                for (int x = 0; x < w; x++) {
                    double px = x + flow.u(x, y) * t;
                    double py = y + flow.v(x, y) * t;
                    int p = y * w + x;
                    if (!(px > 1 && py > 1 && px < w - 2 && py < h - 2)) {
                        continue;
                    }
                    warped[p] = (float) Resample.mirrored(second, w, h, px, py);
                    double m = groups.window[p] * Resample.mirrored(groups.weight, w, h, px, py);
                    weight[p] = (float) m;
                    double e = first[p] - (double) warped[p];
                    double e0 = first[p] - (double) second[p];
                    sumWeight += m;
                    sumSquares += m * e * e;
                    before += m * e0 * e0;
                }
            }
            double spread = Math.sqrt(sumSquares / (sumWeight + 1e-9)) + 1e-9;
            double[][] a = new double[6][6];
            double[] b = new double[6];
            double[] j = new double[6];
            double half = w / 2.0;
            for (int y = 1; y < h - 1; y++) {
                for (int x = 1; x < w - 1; x++) {
                    int p = y * w + x;
                    if (weight[p] <= 0) {
                        continue;
                    }
                    double e = first[p] - (double) warped[p];
                    double r = e / (1.5 * spread);
                    double q = weight[p] / (1 + r * r);
                    j[0] = (first[p + 1]
                                    + (double) at(warped, weight, p + 1, p)
                                    - first[p - 1]
                                    - (double) at(warped, weight, p - 1, p))
                            / 4
                            * t;
                    j[3] = (first[p + w]
                                    + (double) at(warped, weight, p + w, p)
                                    - first[p - w]
                                    - (double) at(warped, weight, p - w, p))
                            / 4
                            * t;
                    double bx = (x - half) / half;
                    double by = (y - h / 2.0) / half;
                    j[1] = j[0] * bx;
                    j[2] = j[0] * by;
                    j[4] = j[3] * bx;
                    j[5] = j[3] * by;
                    for (int row = 0; row < 6; row++) {
                        b[row] += q * j[row] * e;
                        for (int c = row; c < 6; c++) {
                            a[row][c] += q * j[row] * j[c];
                        }
                    }
                }
            }
            return new PairSums(a, b, sumSquares, before);
        }

        /** Next to a place that has no partner the warped plane counts as level. */
        private static float at(float[] warped, float[] weight, int p, int centre) {
            return weight[p] > 0 ? warped[p] : warped[centre];
        }
    }

    /** Mean velocity (x, y) over the pixels that {@code mask} marks, in survey pixels a second. */
    double[] meanVelocity(float[] mask) {
        double n = 0;
        double u = 0;
        double v = 0;
        int w = flow.width();
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] > 0.5f) {
                int row = p / w;
                u += flow.u(p - row * w, row);
                v += flow.v(p - row * w, row);
                n++;
            }
        }
        return n == 0 ? new double[2] : new double[] {u / n, v / n};
    }
}
