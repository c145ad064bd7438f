package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Work;

/**
 * By how much the texture of the clip's mean is to be shrunk for a longer exposure, band by band and place by place.
 * A band's power is split into what persists (the product of the band in the first and the last third of the clip) and
 * what varies; the varying part falls as the variogram says.
 */
final class TextureShrink {

    static final int BANDS = 6;
    private static final double PERSISTING_MARGIN = 0.5;

    /** Up to this band the right amount of texture is kept; two bands further on, the likeliest picture. */
    private static final int LAST_KEPT_BAND = 2;

    private final float[][] persisting;
    private final float[][] varying;

    private TextureShrink(float[][] persisting, float[][] varying) {
        this.persisting = persisting;
        this.varying = varying;
    }

    static TextureShrink of(LuminanceFrames frames, Work work) {
        int w = frames.width();
        int h = frames.height();
        int third = Math.max(1, frames.count() / 3);
        float[][] ends = {frames.mean(0, third), frames.mean(frames.count() - third, frames.count())};
        Bands[] bands = new Bands[2];
        work.forEach(2, k -> bands[k] = Bands.of(ends[k], w, h, BANDS));
        float[][] persisting = new float[BANDS][w * h];
        float[][] varying = new float[BANDS][w * h];
        work.forEach(BANDS, k -> {
            float[] a = bands[0].bands()[k];
            float[] b = bands[1].bands()[k];
            float[] scratch = new float[w * h];
            double window = 2.25 * (1 << k) + 2;
            for (int p = 0; p < a.length; p++) {
                double d = a[p] - (double) b[p];
                varying[k][p] = (float) (0.5 * d * d);
                persisting[k][p] = (float) ((double) a[p] * b[p]);
            }
            Blur.gaussian(varying[k], varying[k], scratch, w, h, window);
            Blur.gaussian(persisting[k], persisting[k], scratch, w, h, window);
            for (int p = 0; p < a.length; p++) {
                varying[k][p] = Math.max(varying[k][p], 0); // running sums may end a rounding below 0
                persisting[k][p] = (float) Math.max(persisting[k][p] - PERSISTING_MARGIN * varying[k][p], 0);
            }
        });
        return new TextureShrink(persisting, varying);
    }

    /**
     * What band {@code k} of the mean is to be multiplied with at pixel {@code p}.
     *
     * @param varianceOfClip variance of a mean over the clip, against one over a third of it
     * @param varianceOfTime the same for the exposure time
     * @param coarseShare share by which a coarse structure is still the same one
     */
    double factor(int k, int p, double varianceOfClip, double varianceOfTime, double coarseShare) {
        double f = persisting[k][p];
        double v = varying[k][p];
        double now = f + v * varianceOfClip + 1e-10;
        if (k <= LAST_KEPT_BAND) {
            return Math.sqrt((f + v * varianceOfTime) / now);
        }
        double likeliest = (f + v * varianceOfClip * coarseShare) / now;
        return k > LAST_KEPT_BAND + 1 ? likeliest : 0.5 * (Math.sqrt((f + v * varianceOfTime) / now) + likeliest);
    }
}
