package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Work;

/**
 * How much of a drifting sky's light goes with the drift, scale by scale and place by place. Clouds go; the glow where
 * the sun went down and the shading towards the horizon stay, and both lie in one picture. At each scale the change
 * between the two ends of the clip is held against the change that the carried picture would have made: the share of it
 * that happened moves.
 */
final class CarriedLight {

    /** Gaussians of 1, 2, 4, … 128 pixels part the scales; what is broader stays. */
    private static final int SCALES = 8;

    /** Width of a place in pixels, and in steps of its scale: enough of both to tell a share from chance. */
    private static final double PLACE_PIXELS = 24;

    private static final double PLACE_STEPS = 2;

    /** Weight of the whole sky's share against that of the place. */
    private static final double WHOLE = 0.1;

    private final float[][] share;

    private CarriedLight(float[][] share) {
        this.share = share;
    }

    /**
     * Compares two differences of the same two moments.
     *
     * @param seen share of the time that each place shows the sky
     * @param happened what the frames changed by
     * @param carried what they would have changed by, had all the light been carried along
     */
    static CarriedLight of(float[] seen, float[] happened, float[] carried, int w, int h, Work work) {
        Bands[] both = new Bands[2];
        work.forEach(2, k -> {
            float[] change = (k == 0 ? happened : carried).clone();
            for (int p = 0; p < change.length; p++) {
                change[p] *= seen[p];
            }
            both[k] = Bands.of(change, w, h, SCALES);
        });
        float[][] share = new float[SCALES][];
        work.forEach(SCALES, k -> share[k] = share(both[0].bands()[k], both[1].bands()[k], seen, k, w, h));
        return new CarriedLight(share);
    }

    private static float[] share(float[] happened, float[] carried, float[] seen, int scale, int w, int h) {
        float[] together = new float[seen.length];
        float[] alone = new float[seen.length];
        double allTogether = 0;
        double allAlone = 1e-12;
        for (int p = 0; p < seen.length; p++) {
            double c = seen[p] * (double) carried[p];
            together[p] = (float) (c * happened[p]);
            alone[p] = (float) (c * carried[p]);
            allTogether += together[p];
            allAlone += alone[p];
        }
        double place = Math.max(PLACE_PIXELS, PLACE_STEPS * (1 << scale));
        float[] scratch = new float[seen.length];
        Blur.gaussian(together, together, scratch, w, h, place);
        Blur.gaussian(alone, alone, scratch, w, h, place);
        double wholeTogether = WHOLE * Math.max(0, allTogether) / seen.length;
        double wholeAlone = WHOLE * allAlone / seen.length;
        for (int p = 0; p < seen.length; p++) {
            double here = (together[p] + wholeTogether) / (Math.max(0, alone[p]) + wholeAlone);
            together[p] = (float) Math.max(0, Math.min(1, here));
        }
        return together;
    }

    /** The part of a plane that is carried along. */
    float[] carried(float[] plane, int w, int h) {
        Bands bands = Bands.of(plane, w, h, SCALES);
        float[] out = new float[plane.length];
        for (int p = 0; p < out.length; p++) {
            double sum = 0;
            for (int k = 0; k < SCALES; k++) {
                sum += share[k][p] * (double) bands.bands()[k][p];
            }
            out[p] = (float) sum;
        }
        return out;
    }
}
