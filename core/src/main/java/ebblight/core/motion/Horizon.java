package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
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
    private static final double SNAP = 0.045;
    private static final double BAND = 0.06;

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
            double t = StrictMath.tan(Math.PI / 90 * (2.0 * k / (TILTS - 1) - 1));
            for (int a = 4; a < h - 4; a++) {
                double sum = 0;
                for (int c = 0; c < columns; c++) {
                    int r = (int) Math.rint(a + t * (2 + 4 * c - w / 2.0));
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
            for (int j = -8; j < 9; j += 2) {
                double strength = edge(edges, w, h, row + i, tilt + (double) j / w, scratch);
                if (strength > strongest) {
                    strongest = strength;
                    snappedRow = row + i;
                    snappedTilt = tilt + (double) j / w;
                }
            }
        }
        if (!clear(regions, edges, snappedRow, snappedTilt, strongest, scratch)) {
            return Optional.empty();
        }
        double half = snappedTilt * w / 2;
        return Optional.of(new Horizon(snappedRow - half, snappedRow + half));
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
        int r = (int) Math.rint(row + tilt * (2 + 4 * column - w / 2.0));
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
        int reach = Math.max(13, (int) (0.12 * h));
        if (h - 1 - reach <= reach) {
            return false;
        }
        int good = 0;
        int bad = 0;
        for (int c = 0; c < scratch.length; c++) {
            int x = 2 + 4 * c;
            int y = rowAt(row, tilt, c, w, reach, h - 1 - reach);
            double up = mean(cloud, w, x, y - 12, y - 2);
            double down = mean(water, w, x, y + 3, y + reach);
            good += up > 0.5 && down > 0.4 ? 1 : 0;
            bad += water[(y - reach) * w + x] > 0.6 || cloud[(y + reach) * w + x] > 0.6 ? 1 : 0;
        }
        double share = (double) good / scratch.length;
        double wrong = (double) bad / scratch.length;
        double around = edge(edges, w, h, row - 5, tilt, scratch) + edge(edges, w, h, row + 5, tilt, scratch);
        return share > 0.3
                && share > 1.5 * wrong
                && strength > Math.max(0.02, 1.25 * around)
                && Math.abs(tilt) < 0.95 * MOST_TILT;
    }

    private static double mean(float[] plane, int w, int x, int from, int to) {
        double sum = 0;
        for (int y = from; y < to; y++) {
            sum += plane[y * w + x];
        }
        return sum / (to - from);
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
                double line = left + (right - left) * x / (w - 1);
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
