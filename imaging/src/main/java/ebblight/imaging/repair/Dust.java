package ebblight.imaging.repair;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.RgbPicture;

/**
 * A speck of dust before the sensor: a round shadow over something smooth. The slow part inside is brought to that of the
 * ring round it, and the grain stays. Over anything that is not smooth it is left alone.
 *
 * @param x of the middle, as a fraction of the width
 * @param y of the middle, as a fraction of the height
 * @param radius as a fraction of the width
 */
public record Dust(double x, double y, double radius) {

    /** Spread of the ring about a plane through it, as a share of its light, above which it is detail. */
    private static final double SMOOTH = 0.04;

    public Dust {
        if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1 && radius > 0 && radius <= 0.05)) {
            throw new IllegalArgumentException(
                    "a speck of dust must lie at fractions 0 to 1 with a radius up to 0.05 of the width, was " + x
                            + ", " + y + ", " + radius);
        }
    }

    /** Pixels changed; 0 where the ring holds detail. */
    int repair(RgbPicture picture, Mask mask) {
        int w = picture.width();
        int h = picture.height();
        double r = Math.max(2, radius * w);
        double cx = x * w;
        double cy = y * h;
        double[][] ring = new double[3][];
        for (int c = 0; c < 3; c++) {
            ring[c] = plane(picture, c, cx, cy, r);
            if (ring[c].length == 0) {
                return 0;
            }
        }
        int changed = 0;
        float[][] was = new float[3][];
        for (int c = 0; c < 3; c++) {
            was[c] = picture.plane(c).clone();
        }
        for (int v = (int) Math.max(0, cy - 2 * r); v < Math.min(h, cy + 2 * r); v++) {
            for (int u = (int) Math.max(0, cx - 2 * r); u < Math.min(w, cx + 2 * r); u++) {
                double far = Math.hypot(u + 0.5 - cx, v + 0.5 - cy) / r;
                if (far >= 1.5) {
                    continue;
                }
                double share = far <= 1 ? 1 : (1.5 - far) / 0.5;
                for (int c = 0; c < 3; c++) {
                    double slow = mean(was[c], w, h, u, v, (int) Math.max(1, r / 3));
                    double wanted = ring[c][0] + ring[c][1] * (u + 0.5 - cx) + ring[c][2] * (v + 0.5 - cy);
                    double gain = slow > 0 ? 1 + share * (Math.max(1, wanted / slow) - 1) : 1;
                    picture.plane(c)[v * w + u] = (float) Math.min(1, gain * was[c][v * w + u]);
                }
                mask.replaced(v * w + u);
                changed++;
            }
        }
        return changed;
    }

    private static double mean(float[] plane, int w, int h, int x, int y, int reach) {
        double sum = 0;
        int n = 0;
        for (int v = Math.max(0, y - reach); v <= Math.min(h - 1, y + reach); v++) {
            for (int u = Math.max(0, x - reach); u <= Math.min(w - 1, x + reach); u++) {
                sum += plane[v * w + u];
                n++;
            }
        }
        return sum / n;
    }

    /** A plane through the ring from 1.5 to 2.2 radii; empty where the ring is not smooth. */
    private static double[] plane(RgbPicture picture, int channel, double cx, double cy, double r) {
        float[] plane = picture.plane(channel);
        int w = picture.width();
        int h = picture.height();
        double[][] a = new double[3][3];
        double[] b = new double[3];
        double squares = 0;
        double sum = 0;
        int n = 0;
        for (int v = (int) Math.max(0, cy - 2.2 * r); v < Math.min(h, cy + 2.2 * r); v++) {
            for (int u = (int) Math.max(0, cx - 2.2 * r); u < Math.min(w, cx + 2.2 * r); u++) {
                double[] t = {1, u + 0.5 - cx, v + 0.5 - cy};
                double far = Math.hypot(t[1], t[2]) / r;
                if (far >= 1.5 && far < 2.2) {
                    double value = plane[v * w + u];
                    squares += value * value;
                    sum += value;
                    n++;
                    for (int i = 0; i < 3; i++) {
                        b[i] += t[i] * value;
                        for (int j = 0; j < 3; j++) {
                            a[i][j] += t[i] * t[j];
                        }
                    }
                }
            }
        }
        double[] right = b.clone();
        double[] fit = LeastSquares.solve(a, b);
        double explained = fit[0] * right[0] + fit[1] * right[1] + fit[2] * right[2];
        boolean smooth = n > 20 && sum > 0 && Math.sqrt(Math.max(0, squares - explained) / n) < SMOOTH * sum / n;
        return smooth ? fit : new double[0];
    }
}
