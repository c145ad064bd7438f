package ebblight.imaging.repair;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;

/**
 * Takes off the glow that dark frames show: what changes slowly across them, above their darkest parts. The level that all
 * of a dark frame has stays, since cameras take it off themselves.
 */
final class Glow {

    /** Size of a cell of the slow part, as a share of the longer side. */
    private static final double CELL = 1.0 / 48;

    private static final double DARKEST = 0.02;
    /** Smallest glow that counts, in steps of the files' codes. */
    private static final double LEAST_STEPS = 1;

    private Glow() {}

    static Change repair(RgbPicture picture, DarkLight dark, boolean[] hot, Mask mask) {
        int n = hot.length;
        if (Double.isNaN(dark.scale())) {
            return new Change("glow", 0, 0, "glow left alone: " + dark.words());
        }
        float[][] slow = new float[3][];
        double most = 0;
        for (int c = 0; c < 3; c++) {
            slow[c] = slow(dark.light().plane(c), hot, picture.width(), picture.height());
            float[] sorted = slow[c].clone();
            float darkest = (float) Quantiles.quantile(sorted, n, DARKEST);
            for (int i = 0; i < n; i++) {
                slow[c][i] = Math.max(0, slow[c][i] - darkest);
                most = Math.max(most, slow[c][i]);
            }
        }
        if (most < LEAST_STEPS * dark.step()) {
            return new Change("glow", 0, 0, "no glow in the dark frames");
        }
        int changed = 0;
        for (int i = 0; i < n; i++) {
            double taken = 0;
            for (int c = 0; c < 3; c++) {
                double less = Math.min(picture.plane(c)[i], dark.scale() * slow[c][i]);
                picture.plane(c)[i] -= (float) less;
                taken = Math.max(taken, less);
            }
            if (taken > LEAST_STEPS * dark.step() / 2) {
                changed++;
                mask.lessened(i, taken / (dark.scale() * most));
            }
        }
        return new Change("glow", changed, 0, "glow taken off " + changed + " pixels, by " + dark.words());
    }

    /** Means round each pixel without hot ones. */
    private static float[] slow(float[] plane, boolean[] hot, int w, int h) {
        float[] light = plane.clone();
        float[] weight = new float[plane.length];
        for (int i = 0; i < light.length; i++) {
            weight[i] = hot[i] ? 0 : 1;
            light[i] *= weight[i];
        }
        double sigma = Math.max(2, CELL * Math.max(w, h));
        float[] workspace = new float[plane.length];
        float[] sum = new float[plane.length];
        float[] share = new float[plane.length];
        Blur.gaussian(light, sum, workspace, w, h, sigma);
        Blur.gaussian(weight, share, workspace, w, h, sigma);
        for (int i = 0; i < sum.length; i++) {
            sum[i] /= Math.max(1e-3f, share[i]);
        }
        return sum;
    }
}
