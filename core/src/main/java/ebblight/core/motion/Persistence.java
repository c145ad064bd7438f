package ebblight.core.motion;

import ebblight.core.numeric.Blur;

/**
 * How much of a single frame's texture is still there in the mean of the clip, by gradient energy round each pixel.
 *
 * @param least in the direction where least of it stays (the smaller generalised eigenvalue of the two gradient
 *     tensors): 1 for what stands, 0 for what renews itself and for what falls along itself
 * @param plain mean over directions
 * @param energy gradient energy of the mean picture, squared luminance per squared pixel
 */
record Persistence(float[] least, float[] plain, float[] energy) {

    private static final float LARGEST = 1.2f;

    static Persistence of(LuminanceFrames frames, float[] mean, double sigma, int samples) {
        int n = frames.pixels();
        float[][] single = new float[3][n];
        float[][] tensor = new float[3][n];
        int used = 0;
        int last = -1;
        float[][] work = new float[2][n];
        for (int k = 0; k < samples; k++) {
            int i = samples == 1 ? 0 : (int) ((double) k * (frames.count() - 1) / (samples - 1));
            if (i != last) {
                tensor(frames.frame(i), frames.width(), frames.height(), sigma, tensor, work);
                for (int c = 0; c < 3; c++) {
                    for (int p = 0; p < n; p++) {
                        single[c][p] += tensor[c][p];
                    }
                }
                used++;
                last = i;
            }
        }
        tensor(mean, frames.width(), frames.height(), sigma, tensor, work);
        float[] least = new float[n];
        float[] plain = new float[n];
        float[] energy = new float[n];
        for (int p = 0; p < n; p++) {
            double xx = single[0][p] / (double) used;
            double xy = single[1][p] / (double) used;
            double yy = single[2][p] / (double) used;
            double little = 1e-3 * (xx + yy) + 1e-9;
            xx += little;
            yy += little;
            double mxx = tensor[0][p];
            double mxy = tensor[1][p];
            double myy = tensor[2][p];
            double determinant = xx * yy - xy * xy;
            double trace = (yy * mxx - 2 * xy * mxy + xx * myy) / determinant;
            double product = (mxx * myy - mxy * mxy) / determinant;
            double smaller = trace / 2 - Math.sqrt(Math.max(trace * trace / 4 - product, 0));
            least[p] = Math.max(0, Math.min(LARGEST, (float) smaller));
            plain[p] = Math.max(0, Math.min(LARGEST, (float) ((mxx + myy) / (xx + yy))));
            energy[p] = (float) (mxx + myy);
        }
        return new Persistence(least, plain, energy);
    }

    /** Products of the gradients of the plane smoothed over 1 px, averaged over {@code sigma}. */
    private static void tensor(float[] plane, int width, int height, double sigma, float[][] tensor, float[][] work) {
        float[] smooth = work[0];
        Blur.gaussian(plane, smooth, work[1], width, height, 1);
        for (int y = 0; y < height; y++) {
            int up = (y > 0 ? y - 1 : height - 1) * width;
            int down = (y + 1 < height ? y + 1 : 0) * width;
            for (int x = 0; x < width; x++) {
                int p = y * width + x;
                int left = y * width + (x > 0 ? x - 1 : width - 1);
                int right = y * width + (x + 1 < width ? x + 1 : 0);
                double gx = (smooth[right] - (double) smooth[left]) / 2;
                double gy = (smooth[down + x] - (double) smooth[up + x]) / 2;
                tensor[0][p] = (float) (gx * gx);
                tensor[1][p] = (float) (gx * gy);
                tensor[2][p] = (float) (gy * gy);
            }
        }
        for (int c = 0; c < 3; c++) {
            Blur.gaussian(tensor[c], tensor[c], work[1], width, height, sigma);
        }
    }
}
