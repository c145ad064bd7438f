package ebblight.core.motion;

/**
 * What stays black in every frame: nothing is seen to move there, and nothing will. Smooth and still as it is, it
 * would pass for a sky without clouds.
 */
final class Unlit {

    /** Two codes of 8 bits, in linear light (IEC 61966-2-1: a code near black is 1/255/12.92). */
    private static final double BLACK = 2 / 255.0 / 12.92;

    /** Change that is less than the noise, as the logarithm that {@link RegionFeatures} tells. */
    private static final double LESS_THAN_NOISE = 0;

    private static final float PUSH = 4;

    private Unlit() {}

    /**
     * Lifts what is black over all other kinds as fixed.
     *
     * @param mean luminance over time
     * @param change over noise, by {@link RegionFeatures}
     */
    static void apply(float[] mean, float[] change, float[][] logits) {
        float[] fixed = logits[Kind.FIXED.column()];
        for (int p = 0; p < mean.length; p++) {
            if (mean[p] < BLACK && change[p] < LESS_THAN_NOISE) {
                for (float[] logit : logits) {
                    fixed[p] = Math.max(fixed[p], logit[p] + (logit == fixed ? 0 : PUSH));
                }
            }
        }
    }
}
