package ebblight.app.memory;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Resample;

/**
 * A small drawing of a view by which it is known again: the logarithm of its luminance without what changes slowly over
 * the picture, 96 pixels wide, as signed bytes.
 *
 * @param codes 96 pixels a row
 */
record ViewSketch(byte[] codes) {

    /** Pixels across. */
    static final int WIDTH = 96;

    private static final double COARSE_PIXELS = 6;
    /** Codes for a stop; what is brighter or darker than its surroundings by more than 4 stops is drawn as 4. */
    private static final double CODES_PER_STOP = 30;

    /** Rows of a sketch of a view of such a shape. */
    static int height(int width, int height) {
        return Math.max(1, Math.round((float) height * WIDTH / width));
    }

    /** Drawn from the mean of a clip. */
    static ViewSketch of(Clip clip) {
        float[] sum = new float[clip.width() * clip.height()];
        float[] one = new float[sum.length];
        for (int i = 0; i < clip.frames(); i++) {
            clip.luminance(i, one);
            for (int p = 0; p < sum.length; p++) {
                sum[p] += one[p] / clip.frames();
            }
        }
        return of(sum, clip.width(), clip.height());
    }

    /** Drawn from a picture's linear luminance. */
    static ViewSketch of(float[] luminance, int width, int height) {
        int h = height(width, height);
        float[] small = new float[WIDTH * h];
        Resample.area(luminance, width, height, small, WIDTH, h);
        double mean = 0;
        for (float v : small) {
            mean += v / (double) small.length;
        }
        for (int p = 0; p < small.length; p++) {
            small[p] = (float) (Math.log(Math.max(small[p], 1e-3 * mean + 1e-6)) / Math.log(2));
        }
        float[] coarse = new float[small.length];
        Blur.gaussian(small, coarse, new float[small.length], WIDTH, h, COARSE_PIXELS);
        byte[] codes = new byte[small.length];
        for (int p = 0; p < codes.length; p++) {
            codes[p] = (byte) Math.max(-127, Math.min(127, Math.rint(CODES_PER_STOP * (small[p] - coarse[p]))));
        }
        return new ViewSketch(codes);
    }

    /** How alike two drawings are: their correlation, 1 for the same view, near 0 for others; 0 for other shapes. */
    double likeness(ViewSketch other) {
        if (codes.length != other.codes.length) {
            return 0;
        }
        double both = 0;
        double mine = 0;
        double its = 0;
        for (int p = 0; p < codes.length; p++) {
            both += codes[p] * other.codes[p];
            mine += codes[p] * codes[p];
            its += other.codes[p] * other.codes[p];
        }
        return mine > 0 && its > 0 ? both / Math.sqrt(mine * its) : 0;
    }
}
