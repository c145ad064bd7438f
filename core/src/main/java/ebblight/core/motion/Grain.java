package ebblight.core.motion;

import ebblight.core.numeric.Blur;

/**
 * How far the texture of single frames is drawn out in one direction, 0 (every way alike) to 1: waves seen from the
 * shore lie flat and strands of a fall hang, whatever the direction, while leaves and blades lie every way.
 *
 * <p>(λ₁ − λ₂) / (λ₁ + λ₂) of the gradients' mean products, the noise taken off (coherence of the structure tensor:
 * Bigün and Granlund 1987, from memory).
 */
final class Grain {

    private static final int SAMPLES = 12;
    private static final double SIGMA = 8;

    /**
     * Variance that white noise of variance 1 leaves in a gradient: half of 1 / 4π, which a Gaussian of 1 px leaves of
     * it, times 1 − 1/e for samples two pixels apart.
     */
    private static final double OF_NOISE = 0.5 / (4 * Math.PI) * (1 - 1 / Math.E);

    /** Where noise is all there is, nothing is drawn out. */
    private static final double NOISE_LEFT = 0.6;

    private Grain() {}

    /** The map, row by row; {@code noise} is the variance of it at every pixel. */
    static float[] of(LuminanceFrames frames, float[] noise) {
        int n = frames.pixels();
        int w = frames.width();
        int h = frames.height();
        float[] workspace = new float[n];
        float[] smooth = new float[n];
        double[][] sum = new double[3][n];
        int samples = Math.min(SAMPLES, frames.count());
        for (int k = 0; k < samples; k++) {
            int i = samples == 1 ? 0 : (int) ((double) k * (frames.count() - 1) / (samples - 1));
            Blur.gaussian(frames.frame(i), smooth, workspace, w, h, 1);
            for (int y = 0; y < h; y++) {
                int up = Math.max(0, y - 1) * w;
                int down = Math.min(h - 1, y + 1) * w;
                for (int x = 0; x < w; x++) {
                    int p = y * w + x;
                    double gx =
                            (smooth[y * w + Math.min(w - 1, x + 1)] - (double) smooth[y * w + Math.max(0, x - 1)]) / 2;
                    double gy = (smooth[down + x] - (double) smooth[up + x]) / 2;
                    sum[0][p] += gx * gx;
                    sum[1][p] += gx * gy;
                    sum[2][p] += gy * gy;
                }
            }
        }
        float[][] mean = new float[3][n];
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < n; p++) {
                mean[c][p] = (float) (sum[c][p] / samples);
            }
            Blur.gaussian(mean[c], mean[c], workspace, w, h, SIGMA);
        }
        float[] grain = new float[n];
        for (int p = 0; p < n; p++) {
            double across = (double) mean[0][p] - mean[2][p];
            double cross = 2.0 * mean[1][p];
            double ofNoise = OF_NOISE * noise[p];
            double both = Math.max((double) mean[0][p] + mean[2][p] - 2 * ofNoise, 0) + NOISE_LEFT * ofNoise + 1e-12;
            grain[p] = (float) Math.min(1, Math.sqrt(across * across + cross * cross) / both);
        }
        return grain;
    }
}
