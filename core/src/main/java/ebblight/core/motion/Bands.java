package ebblight.core.motion;

import ebblight.core.numeric.Blur;

/** A plane cut into band-passes without making it smaller: plane = Σ bands + rest, Gaussians of 1, 2, 4, … pixels. */
record Bands(float[][] bands, float[] rest) {

    static Bands of(float[] plane, int width, int height, int count) {
        float[][] bands = new float[count][];
        float[] current = plane.clone();
        float[] work = new float[plane.length];
        for (int k = 0; k < count; k++) {
            float[] smooth = new float[plane.length];
            Blur.gaussian(current, smooth, work, width, height, 1 << k);
            float[] band = new float[plane.length];
            for (int p = 0; p < band.length; p++) {
                band[p] = (float) (current[p] - (double) smooth[p]);
            }
            bands[k] = band;
            current = smooth;
        }
        return new Bands(bands, current);
    }
}
