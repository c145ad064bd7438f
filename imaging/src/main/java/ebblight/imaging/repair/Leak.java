package ebblight.imaging.repair;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import java.util.Arrays;

/**
 * Light that came in through the eyepiece: what the picture has on top of the same view without it. In cells that show the
 * same still detail in both, the contrast tells how much stronger the one exposure is, whatever was added; what is then
 * left over is the leak. It changes slowly, so a surface of third order goes through the cells.
 */
final class Leak {

    private static final int ACROSS = 24;
    /** Correlation from which a cell shows the same detail in both. */
    private static final double ALIKE = 0.9;

    private static final double LEAST_CELLS = 0.1;
    private static final int TERMS = 10;
    private static final double CLIPPED = 0.98;
    /** Leak below this share of the picture's mean light is not told from noise. */
    private static final double LEAST = 0.01;

    private final RgbPicture picture;
    private final RgbPicture reference;
    private final int size;

    private Leak(RgbPicture picture, RgbPicture reference) {
        this.picture = picture;
        this.reference = reference;
        this.size = Math.max(8, picture.width() / ACROSS);
    }

    static Change repair(RgbPicture picture, RgbPicture reference, Mask mask) {
        return new Leak(picture, reference).repair(mask);
    }

    private record Cell(double x, double y, double slope, double mean, double referenceMean) {}

    private Change repair(Mask mask) {
        double[][] surface = new double[3][];
        for (int c = 0; c < 3; c++) {
            Cell[] alike = cells(c);
            int all = (picture.width() / size) * (picture.height() / size);
            if (alike.length < Math.max(2 * TERMS, LEAST_CELLS * all)) {
                throw new IllegalArgumentException("reference: only " + alike.length + " of " + all
                        + " parts show the same still detail; it must be the same view, without the leak");
            }
            double[] slopes = Arrays.stream(alike).mapToDouble(Cell::slope).toArray();
            surface[c] = fit(alike, Quantiles.median(slopes, slopes.length));
        }
        return takeOff(surface, mask);
    }

    /** Cells in which the picture follows the reference. */
    private Cell[] cells(int channel) {
        float[] p = picture.plane(channel);
        float[] r = reference.plane(channel);
        int w = picture.width();
        int h = picture.height();
        Cell[] found = new Cell[(w / size) * (h / size)];
        int n = 0;
        for (int top = 0; top + size <= h; top += size) {
            for (int left = 0; left + size <= w; left += size) {
                double mp = 0;
                double mr = 0;
                double pr = 0;
                double rr = 0;
                double pp = 0;
                double most = 0;
                for (int y = top; y < top + size; y++) {
                    for (int x = left; x < left + size; x++) {
                        double a = p[y * w + x];
                        double b = r[y * w + x];
                        mp += a;
                        mr += b;
                        pr += a * b;
                        rr += b * b;
                        pp += a * a;
                        most = Math.max(most, Math.max(a, b));
                    }
                }
                double m = (double) size * size;
                double variance = rr - mr * mr / m;
                double covariance = pr - mp * mr / m;
                double alike = covariance / Math.sqrt(Math.max(1e-300, variance * (pp - mp * mp / m)));
                if (alike > ALIKE && most < CLIPPED) {
                    found[n++] = new Cell(
                            (left + size / 2.0) / w, (top + size / 2.0) / h, covariance / variance, mp / m, mr / m);
                }
            }
        }
        return Arrays.copyOf(found, n);
    }

    /** A surface through what the cells have too much; cells far off it (something moved) count less in a second round. */
    private static double[] fit(Cell[] cells, double gain) {
        double[] weight = new double[cells.length];
        Arrays.fill(weight, 1);
        double[] surface = new double[TERMS];
        for (int round = 0; round < 6; round++) {
            double[][] a = new double[TERMS][TERMS];
            double[] b = new double[TERMS];
            for (int k = 0; k < cells.length; k++) {
                double[] t = terms(cells[k].x, cells[k].y);
                double much = cells[k].mean - gain * cells[k].referenceMean;
                for (int i = 0; i < TERMS; i++) {
                    b[i] += weight[k] * t[i] * much;
                    for (int j = 0; j < TERMS; j++) {
                        a[i][j] += weight[k] * t[i] * t[j];
                    }
                }
            }
            surface = LeastSquares.solve(a, b);
            double[] off = new double[cells.length];
            for (int k = 0; k < off.length; k++) {
                double much = cells[k].mean - gain * cells[k].referenceMean;
                weight[k] = Math.abs(much - value(surface, cells[k].x, cells[k].y));
                off[k] = weight[k];
            }
            double scale = 2 * Quantiles.median(off, off.length) + 1e-9;
            for (int k = 0; k < off.length; k++) {
                weight[k] = 1 / (1 + weight[k] * weight[k] / (scale * scale));
            }
        }
        return surface;
    }

    private static double[] terms(double x, double y) {
        return new double[] {1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y};
    }

    private static double value(double[] surface, double x, double y) {
        double[] t = terms(x, y);
        double sum = 0;
        for (int i = 0; i < TERMS; i++) {
            sum += surface[i] * t[i];
        }
        return sum;
    }

    private Change takeOff(double[][] surface, Mask mask) {
        int w = picture.width();
        int h = picture.height();
        double mean = 0;
        double most = 0;
        for (int i = 0; i < w * h; i++) {
            mean += picture.green()[i] / ((double) w * h);
        }
        for (int k = 0; k < 400; k++) {
            for (int c = 0; c < 3; c++) {
                most = Math.max(most, value(surface[c], (k % 20 + 0.5) / 20, (Math.floorDiv(k, 20) + 0.5) / 20));
            }
        }
        if (most < LEAST * mean) {
            return new Change("lightLeak", 0, w * h, "no leaked light was found that is sure");
        }
        int changed = 0;
        for (int i = 0; i < w * h; i++) {
            double taken = 0;
            for (int c = 0; c < 3; c++) {
                double light = value(surface[c], (i % w + 0.5) / w, (Math.floorDiv(i, w) + 0.5) / h);
                double less = Math.min(picture.plane(c)[i], Math.max(0, light));
                picture.plane(c)[i] -= (float) less;
                taken = Math.max(taken, less);
            }
            if (taken > LEAST * mean) {
                changed++;
                mask.lessened(i, taken / most);
            }
        }
        return new Change(
                "lightLeak",
                changed,
                w * h - changed,
                "leaked light taken off, up to " + Places.of(100 * most / mean, 0) + " % of the picture's mean");
    }
}
