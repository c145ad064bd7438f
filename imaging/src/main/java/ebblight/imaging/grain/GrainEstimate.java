package ebblight.imaging.grain;

/**
 * Noise measured on the picture itself: the white part of blocks of 16 pixels (Immerkær 1996), the calmest tenth in eight
 * classes of luminance. Texture only adds, so this is an upper bound; what a JPEG smoothed away is not seen.
 */
public final class GrainEstimate {

    private static final int BLOCK = 16;
    /**
     * A lowest tenth over the true variance: a block holds about 256/3.78 independent values (Σρ² of the mask is 1.944 in
     * each direction), so its variance scatters by √(2/68), and the lowest tenth lies 1.28 of that below.
     */
    private static final double LOWEST_TENTH = 0.78;

    private GrainEstimate() {}

    /** Noise of a plane of luminance. */
    public static Grain of(float[] y, int width, int height) {
        int columns = width / BLOCK;
        int rows = height / BLOCK;
        int blocks = columns * rows;
        if (blocks < 2 * CalmLine.CLASSES) {
            return new Grain(0, 0, "not measured: the picture is too small");
        }
        double[] mean = new double[blocks];
        double[] variance = new double[blocks];
        for (int k = 0; k < blocks; k++) {
            block(y, width, k % columns * BLOCK, k / columns * BLOCK, k, mean, variance);
        }
        return CalmLine.of(mean, variance, LOWEST_TENTH, "the picture's own calm places");
    }

    private static void block(float[] y, int width, int left, int top, int k, double[] mean, double[] variance) {
        double sum = 0;
        double squares = 0;
        int inner = 0;
        for (int v = top; v < top + BLOCK; v++) {
            for (int u = left; u < left + BLOCK; u++) {
                int p = v * width + u;
                sum += y[p];
                if (v > top && v < top + BLOCK - 1 && u > left && u < left + BLOCK - 1) {
                    double white = White.at(y, p, width);
                    squares += white * white;
                    inner++;
                }
            }
        }
        mean[k] = sum / (BLOCK * BLOCK);
        variance[k] = squares / (White.SQUARES * inner);
    }
}
