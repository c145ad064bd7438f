package ebblight.core.motion;

import ebblight.core.numeric.Blur;

/**
 * Local contrast that stays in a region however long the exposure: strands of a waterfall, rocks under water. It is
 * what the first and the last third of the clip have in common in the band of 0.2 to 2 % of the width, so noise and
 * texture that renews itself drop out. Texture that changes more slowly than the clip counts as standing: then it is
 * an upper bound.
 */
final class Standing {

    private static final double FINE = 0.002;
    private static final double COARSE = 0.02;

    private Standing() {}

    /** Tells the standing contrast of the part that a mask marks. */
    interface Meter {
        double of(float[] mask);
    }

    /** Standing contrast of what {@code mask} marks, as a share of its mean luminance; 0 where none can be told. */
    static double of(LuminanceFrames frames, float[] mask) {
        int third = Math.max(1, frames.count() / 3);
        return between(frames, frames.mean(0, third), frames.mean(frames.count() - third, frames.count()), mask);
    }

    static double between(LuminanceFrames frames, float[] first, float[] last, float[] mask) {
        return between(frames.width(), frames.height(), first, last, mask);
    }

    static double between(int w, int h, float[] first, float[] last, float[] mask) {
        float[] a = band(first, mask, w, h);
        float[] b = band(last, mask, w, h);
        CellMean power = new CellMean(w, h);
        double light = 0;
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] > 0.5f) {
                power.add(p, a[p] * (double) b[p]);
                light += 0.5 * (first[p] + (double) last[p]);
            }
        }
        if (power.count() == 0 || light <= 0) {
            return 0;
        }
        return power.mean() > 2 * power.error() ? Math.sqrt(power.mean()) / (light / power.count()) : 0;
    }

    /** Band-pass of the plane inside the mask only, so that the region's edge does not count. */
    private static float[] band(float[] plane, float[] mask, int w, int h) {
        int n = plane.length;
        float[] work = new float[n];
        float[] masked = new float[n];
        for (int p = 0; p < n; p++) {
            masked[p] = plane[p] * mask[p];
        }
        float[] fine = inside(masked, mask, w, h, FINE * w, work);
        float[] coarse = inside(masked, mask, w, h, COARSE * w, work);
        for (int p = 0; p < n; p++) {
            fine[p] = (float) ((fine[p] - (double) coarse[p]) * mask[p]);
        }
        return fine;
    }

    private static float[] inside(float[] masked, float[] mask, int w, int h, double sigma, float[] work) {
        float[] value = new float[masked.length];
        float[] weight = new float[masked.length];
        Blur.gaussian(masked, value, work, w, h, sigma);
        Blur.gaussian(mask, weight, work, w, h, sigma);
        for (int p = 0; p < value.length; p++) {
            value[p] = (float) (value[p] / (weight[p] + 1e-6));
        }
        return value;
    }
}
