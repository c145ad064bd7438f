package ebblight.core.motion;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Work;

/**
 * One step of robust least squares that lays means of the clip over each other: the normal equations for a better
 * flow, how much of the difference the flow at hand explains, and how far parts of the picture disagree with it.
 */
final class DriftFit {

    /** Square patches across the width; clouds of different patches change on their own. */
    private static final int PATCHES_ACROSS = 6;

    private static final double EVEN_RIDGE = 1e-4;
    private static final double STIFFNESS = 0.02;
    private static final double ROBUST_SPREADS = 1.5;

    /** A sum of squared differences beside which there is none: rounding. */
    private static final double NOTHING = 1e-12;

    private final Flow flow;
    private final boolean affine;
    private final double[][] a = new double[6][6];
    private final double[] b = new double[6];
    /** What each patch adds to b for the even drift to the right and down. */
    private final double[][] patch;

    /** Squared difference of the means carried along the flow, and as they are, each place by the same weight. */
    private final double[] left = new double[1];

    private final double[] before = new double[1];

    private DriftFit(Flow flow, boolean affine) {
        this.flow = flow;
        this.affine = affine;
        int down = flow.height() * PATCHES_ACROSS / flow.width() + 1;
        patch = new double[down * PATCHES_ACROSS][2];
    }

    /** The equations of all pairs of means {@code lag} apart. */
    static DriftFit of(DriftMeans means, Flow flow, int lag, boolean affine, Work work) {
        int[] starts = means.starts(lag);
        DriftFit[] pairs = new DriftFit[starts.length];
        work.forEach(starts.length, k -> {
            pairs[k] = new DriftFit(flow, affine);
            pairs[k].add(means, starts[k], lag);
        });
        DriftFit all = new DriftFit(flow, affine);
        for (DriftFit pair : pairs) {
            all.add(pair);
        }
        return all;
    }

    private void add(DriftFit pair) {
        left[0] += pair.left[0];
        before[0] += pair.before[0];
        for (int r = 0; r < 6; r++) {
            b[r] += pair.b[r];
            for (int c = r; c < 6; c++) {
                a[r][c] += pair.a[r][c];
                a[c][r] = a[r][c];
            }
        }
        for (int k = 0; k < patch.length; k++) {
            patch[k][0] += pair.patch[k][0];
            patch[k][1] += pair.patch[k][1];
        }
    }

    private void add(DriftMeans means, int start, int lag) {
        int w = means.width();
        int h = means.height();
        double t = means.seconds(start, lag);
        float[] first = means.planes()[start];
        float[] second = means.planes()[start + lag];
        int[] samples = means.samples();
        float[] error = new float[samples.length];
        float[] unmoved = new float[samples.length];
        float[] weight = new float[samples.length];
        float[] right = new float[samples.length];
        float[] down = new float[samples.length];
        double sumWeight = 0;
        double sumSquares = 0;
        for (int k = 0; k < samples.length; k++) {
            int p = samples[k];
            int y = p / w;
            int x = p - y * w;
            double px = x + flow.u(x, y) * t;
            double py = y + flow.v(x, y) * t;
            if (!(px > 1 && py > 1 && px < w - 2 && py < h - 2)) {
                continue;
            }
            int at = ((int) py) * w + (int) px;
            double ax = px - (int) px;
            double ay = py - (int) py;
            double e = first[p] - between(second, at, w, ax, ay);
            double m = means.window()[p] * between(means.weight(), at, w, ax, ay);
            error[k] = (float) e;
            unmoved[k] = first[p] - second[p];
            weight[k] = (float) m;
            right[k] = (float) ((first[p + 1]
                            - (double) first[p - 1]
                            + between(second, at + 1, w, ax, ay)
                            - between(second, at - 1, w, ax, ay))
                    / 4);
            down[k] = (float) ((first[p + w]
                            - (double) first[p - w]
                            + between(second, at + w, w, ax, ay)
                            - between(second, at - w, w, ax, ay))
                    / 4);
            sumWeight += m;
            sumSquares += m * e * e;
        }
        double spread = ROBUST_SPREADS * (Math.sqrt(sumSquares / (sumWeight + 1e-9)) + 1e-9);
        double half = w / 2.0;
        double[] j = new double[6];
        for (int k = 0; k < samples.length; k++) {
            if (weight[k] <= 0) {
                continue;
            }
            double e = error[k];
            double e0 = unmoved[k];
            // What changes strongly either way, as a gust on water taken for sky, must not drown the rest.
            double even = weight[k] / (1 + (e * e + e0 * e0) / (2 * spread * spread));
            left[0] += even * e * e;
            before[0] += even * e0 * e0;
            double q = weight[k] / (1 + e * e / (spread * spread));
            j[0] = right[k] * t;
            j[3] = down[k] * t;
            int y = samples[k] / w;
            int x = samples[k] - y * w;
            double[] here = patch[y * PATCHES_ACROSS / w * PATCHES_ACROSS + x * PATCHES_ACROSS / w];
            here[0] += q * j[0] * e;
            here[1] += q * j[3] * e;
            if (affine) {
                double bx = (x - half) / half;
                double by = (y - h / 2.0) / half;
                j[1] = j[0] * bx;
                j[2] = j[0] * by;
                j[4] = j[3] * bx;
                j[5] = j[3] * by;
                addAll(q, j, e);
            } else {
                a[0][0] += q * j[0] * j[0];
                a[0][3] += q * j[0] * j[3];
                a[3][3] += q * j[3] * j[3];
                b[0] += q * j[0] * e;
                b[3] += q * j[3] * e;
            }
        }
    }

    private void addAll(double q, double[] j, double e) {
        for (int row = 0; row < 6; row++) {
            b[row] += q * j[row] * e;
            for (int c = row; c < 6; c++) {
                a[row][c] += q * j[row] * j[c];
            }
        }
    }

    /** The plane between four samples, the first of them at index {@code at}. */
    private static double between(float[] plane, int at, int w, double ax, double ay) {
        double top = plane[at] + ax * (plane[at + 1] - (double) plane[at]);
        double bottom = plane[at + w] + ax * (plane[at + w + 1] - (double) plane[at + w]);
        return top + ay * (bottom - top);
    }

    /** Share of the squared difference that the flow handed in explains; 0 where nothing differs. */
    double gain() {
        return a[0][0] + a[3][3] > 0 ? 1 - (left[0] + NOTHING) / (before[0] + NOTHING) : 0;
    }

    /** The better flow. */
    Flow next() {
        double scale = a[0][0] + a[3][3];
        int w = flow.width();
        int h = flow.height();
        if (!(scale > 0)) {
            return flow;
        }
        if (!affine) {
            double[][] small = {{a[0][0] + EVEN_RIDGE * scale, a[0][3]}, {a[3][0], a[3][3] + EVEN_RIDGE * scale}};
            double[] d = LeastSquares.solve(small, new double[] {b[0], b[3]});
            return new Flow(flow.u0() + d[0], 0, 0, flow.v0() + d[1], 0, 0, w, h);
        }
        double[] now = {flow.u0(), flow.ux(), flow.uy(), flow.v0(), flow.vx(), flow.vy()};
        for (int r = 0; r < 6; r++) {
            boolean constant = r % 3 == 0;
            a[r][r] += (constant ? EVEN_RIDGE : STIFFNESS) * scale;
            b[r] -= constant ? 0 : STIFFNESS * scale * now[r];
        }
        double[] d = LeastSquares.solve(a, b);
        return new Flow(now[0] + d[0], now[1] + d[1], now[2] + d[2], now[3] + d[3], now[4] + d[4], now[5] + d[5], w, h);
    }

    /**
     * Standard error of the even drift in pixels a second, both directions together, at the solution: from the pulls
     * of the patches, which clouds that change on their own make differ (A⁻¹ Σ g gᵀ A⁻¹ with g the pull of a patch;
     * Liang and Zeger 1986, from memory). Infinite when fewer than three patches pull.
     */
    double standardError() {
        double xx = a[0][0] * (1 + EVEN_RIDGE);
        double xy = a[0][3];
        double yy = a[3][3] * (1 + EVEN_RIDGE);
        double determinant = xx * yy - xy * xy;
        int pulling = 0;
        double sum = 0;
        for (double[] g : patch) {
            if (g[0] != 0 || g[1] != 0) {
                pulling++;
                double du = yy * g[0] - xy * g[1];
                double dv = xx * g[1] - xy * g[0];
                sum += du * du + dv * dv;
            }
        }
        return pulling < 3 || !(determinant > 0)
                ? Double.POSITIVE_INFINITY
                : Math.sqrt(sum * pulling / (pulling - 1.0)) / determinant;
    }
}
