package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Rounding;
import java.util.Optional;

/**
 * A straight line between drifting parts above and flowing parts below.
 *
 * @param left row where it meets the left edge of the picture, in pixels
 * @param right row where it meets the right edge
 */
public record Horizon(double left, double right) {

    private static final double MOST_TILT = StrictMath.tan(Math.PI / 90);
    private static final int TILTS = 17;
    /** Far water seems to drift, haze to stand: the parts meet this many heights off the edge. */
    private static final double SNAP = 0.2;

    /** Rows on either side over which the middle of the edge is taken, and how far it may lie off the line. */
    private static final int CENTRE = 3;

    private static final double OFF = 1.5;
    private static final double BAND = 0.06;

    /** Haze over the line and far water under it may look like anything; this far from it, in heights, sky is no sea. */
    private static final double NEAR = 0.12;

    /** The edge over that of the rows beside it: bands of gusts far out reach 1.7, a far shore with trees stays at 1.3. */
    private static final double STANDS_OUT = 1.6;

    private static final double LEAST = 0.2;
    private static final double CLEARLY = 2;

    /** The likeliest line by the soft regions, moved to the strongest edge nearby; empty unless it is clear. */
    static Optional<Horizon> find(SoftRegions regions, float[] median) {
        int w = regions.width();
        int h = regions.height();
        if (h < 40 || w < 40) {
            return Optional.empty();
        }
        float[] cloud = regions.share(Kind.DRIFTING);
        float[] water = regions.share(Kind.FLOWING);
        int columns = (w - 2 + 3) / 4;
        double[][] above = new double[columns][h + 1];
        for (int c = 0; c < columns; c++) {
            for (int y = 0; y < h; y++) {
                int p = y * w + 2 + 4 * c;
                above[c][y + 1] = above[c][y] + cloud[p] - water[p];
            }
        }
        double best = Double.NEGATIVE_INFINITY;
        int row = 0;
        double tilt = 0;
        for (int k = 0; k < TILTS; k++) {
            double t = MOST_TILT * (2.0 * k / (TILTS - 1) - 1);
            for (int a = 4; a < h - 4; a++) {
                double sum = 0;
                for (int c = 0; c < columns; c++) {
                    int r = (int) Rounding.even(a + t * (2 + 4 * c - w / 2.0));
                    r = Math.max(0, Math.min(h, r));
                    sum += 2 * above[c][r] - above[c][h];
                }
                if (sum > best) {
                    best = sum;
                    row = a;
                    tilt = t;
                }
            }
        }
        float[] edges = edges(median, w, h);
        int reach = (int) (SNAP * h);
        double strongest = Double.NEGATIVE_INFINITY;
        int snappedRow = row;
        double snappedTilt = tilt;
        double[] scratch = new double[columns];
        for (int i = -reach; i <= reach; i++) {
            for (int k = 0; k < 2 * TILTS - 1; k++) {
                double t = MOST_TILT * ((double) k / (TILTS - 1) - 1);
                double strength = edge(edges, w, h, row + i, t, scratch);
                if (strength > strongest) {
                    strongest = strength;
                    snappedRow = row + i;
                    snappedTilt = t;
                }
            }
        }
        if (!clear(regions, edges, snappedRow, snappedTilt, strongest, scratch)) {
            return Optional.empty();
        }
        return Optional.of(refined(edges, w, h, snappedRow, snappedTilt, columns));
    }

    /** The line through the middle of the edge in each column, those left out where it lies elsewhere: a fraction of a pixel. */
    private static Horizon refined(float[] edges, int w, int h, int row, double tilt, int columns) {
        double a = row;
        double b = tilt;
        for (int round = 0; round < 3; round++) {
            double s = 0;
            double sx = 0;
            double sxx = 0;
            double sy = 0;
            double sxy = 0;
            for (int c = 0; c < columns; c++) {
                double x = 2 + 4 * c - w / 2.0;
                int y = rowAt(a, b, c, w, 1 + CENTRE, h - 2 - CENTRE);
                double weight = 0;
                double moment = 0;
                for (int r = y - CENTRE; r <= y + CENTRE; r++) {
                    double e = edges[r * w + 2 + 4 * c];
                    weight += e * e;
                    moment += e * e * r;
                }
                double at = moment / (weight + 1e-12);
                if (weight > 0 && Math.abs(at - a - b * x) < OFF) {
                    s++;
                    sx += x;
                    sxx += x * x;
                    sy += at;
                    sxy += x * at;
                }
            }
            double determinant = s * sxx - sx * sx;
            if (s < columns / 4.0 || determinant <= 0) {
                break;
            }
            a = (sxx * sy - sx * sxy) / determinant;
            b = (s * sxy - sx * sy) / determinant;
        }
        return new Horizon(a - b * w / 2, a + b * w / 2);
    }

    /** Relative step between the rows above and below. */
    private static float[] edges(float[] median, int w, int h) {
        float[] edges = new float[w * h];
        for (int y = 1; y < h - 1; y++) {
            for (int x = 0; x < w; x++) {
                int p = y * w + x;
                edges[p] = (float) (Math.abs((double) median[p + w] - median[p - w]) / (median[p] + 0.02));
            }
        }
        return edges;
    }

    private static int rowAt(double row, double tilt, int column, int w, int low, int high) {
        int r = (int) Rounding.even(row + tilt * (2 + 4 * column - w / 2.0));
        return Math.max(low, Math.min(high, r));
    }

    private static double edge(float[] edges, int w, int h, double row, double tilt, double[] scratch) {
        for (int c = 0; c < scratch.length; c++) {
            scratch[c] = edges[rowAt(row, tilt, c, w, 1, h - 2) * w + 2 + 4 * c];
        }
        return Quantiles.median(scratch, scratch.length);
    }

    private static boolean clear(
            SoftRegions regions, float[] edges, double row, double tilt, double strength, double[] scratch) {
        int w = regions.width();
        int h = regions.height();
        float[] cloud = regions.share(Kind.DRIFTING);
        float[] water = regions.share(Kind.FLOWING);
        int reach = Math.max(13, (int) (NEAR * h));
        if (h - 1 - reach <= reach) {
            return false;
        }
        int good = 0;
        int bad = 0;
        for (int c = 0; c < scratch.length; c++) {
            int x = 2 + 4 * c;
            int y = rowAt(row, tilt, c, w, reach, h - 1 - reach);
            double cloudAbove = mean(cloud, w, x, 0, y - 2);
            double waterAbove = mean(water, w, x, 0, y - 2);
            double cloudBelow = mean(cloud, w, x, y + 3, h);
            double waterBelow = mean(water, w, x, y + 3, h);
            boolean sky = cloudAbove > LEAST && cloudAbove > CLEARLY * waterAbove;
            boolean sea = waterBelow > LEAST && waterBelow > CLEARLY * cloudBelow;
            good += sky && sea ? 1 : 0;
            bad += water[(y - reach) * w + x] > 0.6 || cloud[(y + reach) * w + x] > 0.6 ? 1 : 0;
        }
        double share = (double) good / scratch.length;
        double wrong = (double) bad / scratch.length;
        double around = edge(edges, w, h, row - 5, tilt, scratch) + edge(edges, w, h, row + 5, tilt, scratch);
        return share > 0.3
                && share > 1.5 * wrong
                && strength > Math.max(0.02, STANDS_OUT * around)
                && Math.abs(tilt) < 0.95 * MOST_TILT;
    }

    private static double mean(float[] plane, int w, int x, int from, int to) {
        double sum = 0;
        for (int y = from; y < to; y++) {
            sum += plane[y * w + x];
        }
        return sum / (to - from);
    }

    /** Its row in column {@code x} of a picture {@code width} pixels wide. */
    double at(int x, int width) {
        return left + (right - left) * x / (width - 1);
    }

    /** The shares with no drifting part below the line and no flowing part just above it. */
    SoftRegions apply(SoftRegions regions) {
        int w = regions.width();
        int h = regions.height();
        float[][] share = new float[RegionModel.KINDS][];
        for (int c = 0; c < share.length; c++) {
            share[c] = regions.all()[c].clone();
        }
        float[] cloud = share[Kind.DRIFTING.column()];
        float[] water = share[Kind.FLOWING.column()];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double line = at(x, w);
                double below = Math.max(0, Math.min(1, y - line + 0.5));
                double justAbove = y > line - BAND * h ? 1 - below : 0;
                int p = y * w + x;
                double wet = water[p] + cloud[p] * below;
                double dry = cloud[p] * (1 - below);
                cloud[p] = (float) (dry + wet * justAbove);
                water[p] = (float) (wet * (1 - justAbove));
            }
        }
        return new SoftRegions(w, h, share);
    }
}
