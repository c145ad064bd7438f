package ebblight.imaging.card;

import ebblight.core.numeric.LeastSquares;

/** The tilt of a horizon: the straight edge across most of the picture that is strongest for its whole length. */
final class HorizonTilt {

    private static final double MOST_DEGREES = 6;
    private static final double STEP_DEGREES = 0.25;
    /** Share of the columns in which the edge must be seen. */
    private static final double LEAST_SHARE = 0.55;
    /** Stops from cell to cell from which a column shows it. */
    private static final double LEAST_EDGE = 0.12;
    /** Cells by which the edge of a column may lie off the line. */
    private static final double OFF = 1.5;

    /** Parts of the line that are left out in turn to tell how sure it is (jackknife; Quenouille 1956, from memory). */
    private static final int BLOCKS = 8;

    /** Of Student's distribution with 7 degrees of freedom, 97.5 % (table; from memory). */
    private static final double STUDENT = 2.365;

    private static final MeasuredHorizon NONE = new MeasuredHorizon(Double.NaN, Double.NaN, false);

    /** What places told by cells add, in degrees: drawn horizons of known tilt leave so much beside their spread. */
    private static final double OWN_DEGREES = 0.03;

    /** Cells from which on another line is another edge. */
    private static final int APART = 8;
    /** Times that the strength of a horizon is over that of any other edge: crests lie side by side, a horizon alone. */
    private static final double OUTSTANDING = 1.25;

    private HorizonTilt() {}

    /** Degrees by which the right end lies lower; not a number where no horizon is clear. */
    static double degrees(Cells cells) {
        return measured(cells).degrees();
    }

    /** The tilt with its range; both not a number where no horizon is clear. */
    static MeasuredHorizon measured(Cells cells) {
        int w = cells.width();
        int h = cells.height();
        double[] edge = new double[w * h];
        for (int y = 1; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int i = y * w + x;
                edge[i] = cells.known(i) && cells.known(i - w) ? cells.level(i) - cells.level(i - w) : 0;
            }
        }
        double[] byRow = new double[h];
        double best = 0;
        double bestTilt = 0;
        double bestRow = 0;
        int sign = 1;
        for (double degrees = -MOST_DEGREES; degrees <= MOST_DEGREES; degrees += STEP_DEGREES) {
            double slope = Math.tan(Math.toRadians(degrees));
            for (int row = 2; row < h - 2; row++) {
                for (int s = -1; s <= 1; s += 2) {
                    double strength = strength(edge, w, h, row, slope, s);
                    byRow[row] = Math.max(byRow[row], strength);
                    if (strength > best) {
                        best = strength;
                        bestTilt = slope;
                        bestRow = row;
                        sign = s;
                    }
                }
            }
        }
        double rival = 0;
        for (int row = 0; row < h; row++) {
            rival = Math.abs(row - bestRow) > APART ? Math.max(rival, byRow[row]) : rival;
        }
        return best == 0 ? NONE : refined(edge, w, h, bestRow, bestTilt, sign).with(best > OUTSTANDING * rival);
    }

    /** Sum along a line of the edges of one sign, none counting for more than a clear one. */
    private static double strength(double[] edge, int w, int h, double row, double slope, int sign) {
        double sum = 0;
        for (int x = 0; x < w; x++) {
            int y = (int) Math.rint(row + slope * (x - w / 2.0));
            if (y > 0 && y < h) {
                sum += Math.max(0, Math.min(4 * LEAST_EDGE, sign * edge[y * w + x]));
            }
        }
        return sum;
    }

    /** A line through where the edge lies in each column, to parts of a cell. */
    private static MeasuredHorizon refined(double[] edge, int w, int h, double row, double slope, int sign) {
        double[] xs = new double[w];
        double[] ys = new double[w];
        int n = 0;
        for (int x = 0; x < w; x++) {
            double line = row + slope * (x - w / 2.0);
            int from = (int) Math.rint(line) - 2;
            double sum = 0;
            double moment = 0;
            for (int y = Math.max(1, from); y <= Math.min(h - 1, from + 4); y++) {
                double e = Math.max(0, sign * edge[y * w + x]);
                sum += e;
                moment += e * y;
            }
            if (sum > LEAST_EDGE && Math.abs(moment / sum - line) <= OFF) {
                xs[n] = x - w / 2.0;
                ys[n++] = moment / sum;
            }
        }
        if (n < LEAST_SHARE * w) {
            return NONE;
        }
        double degrees = slope(xs, ys, n, n, n);
        double square = 0;
        for (int k = 0; k < BLOCKS; k++) {
            double without = slope(xs, ys, n, k * n / BLOCKS, (k + 1) * n / BLOCKS);
            square += (without - degrees) * (without - degrees);
        }
        double spread = STUDENT * Math.sqrt(square * (BLOCKS - 1) / BLOCKS);
        return new MeasuredHorizon(degrees, Math.hypot(spread, OWN_DEGREES), true);
    }

    /** In degrees, of the first {@code n} places but those from {@code from} to {@code until}. */
    private static double slope(double[] xs, double[] ys, int n, int from, int until) {
        double[] x = new double[n - (until - from)];
        double[] y = new double[x.length];
        for (int i = 0, k = 0; i < n; i++) {
            if (i < from || i >= until) {
                x[k] = xs[i];
                y[k++] = ys[i];
            }
        }
        return Math.toDegrees(Math.atan(LeastSquares.slope(x, y)));
    }
}
