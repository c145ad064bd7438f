package ebblight.imaging.finish;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Work;

/** Strengthens edges on L*: the difference from the Gaussian mean is added again, less where it is noise. */
final class Edges {

    private static final double SMALLEST_SIGMA = 0.35;
    private static final double LARGEST_SIGMA = 4;
    /** An edge goes at most so many L* beyond its surroundings. */
    private static final double OVERSHOOT = 6;

    private Edges() {}

    /**
     * Changes {@code y}, luminance in linear light, in place.
     *
     * @param coring differences in L* of this size are left as they are
     */
    static void strengthen(float[] y, int width, int height, double sigma, double amount, double coring, Work work) {
        double s = Math.min(LARGEST_SIGMA, sigma);
        if (s < SMALLEST_SIGMA) {
            return; // finer than a pixel: nothing that the eye could see is there
        }
        float[] lightness = new float[y.length];
        float[] mean = new float[y.length];
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                lightness[p] = (float) Colours.lightness(y[p]);
            }
        });
        int reach = (int) Math.ceil(4 * s) + 1;
        Bands.filter(
                lightness,
                mean,
                width,
                height,
                reach,
                work,
                (band, w, rows) -> Blur.gaussian(band, band, new float[band.length], w, rows, s));
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                double difference = lightness[p] - (double) mean[p];
                double kept = Math.copySign(Math.max(0, Math.abs(difference) - coring), difference);
                double added = Math.max(-OVERSHOOT, Math.min(OVERSHOOT, amount * kept));
                y[p] = (float) Colours.luminanceOf(Math.max(0, Math.min(100, lightness[p] + added)));
            }
        });
    }
}
