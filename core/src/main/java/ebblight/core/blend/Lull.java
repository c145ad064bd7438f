package ebblight.core.blend;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/**
 * The frame in which what sways comes closest to its place of rest: the one whose luminance over the part differs least,
 * in the mean of absolute differences, from the median of every pixel in time. Each frame's light is first made equal,
 * so that a passing cloud does not count as movement.
 *
 * @param frame its place in the clip, from 0
 * @param distance that mean difference as a share of the part's mean light
 * @param typicalDistance the same for the frame in the middle when all are ordered by it
 */
public record Lull(int frame, double distance, double typicalDistance) {

    private static final double DARK = 1e-6;

    /** Finds it over the pixels where {@code mask} is 1. */
    public static Lull of(Clip clip, float[] mask, Work work) {
        int[] at = Marked.pixels(mask);
        int n = clip.frames();
        if (at.length == 0) {
            throw new IllegalArgumentException("nothing is marked to look for a lull in");
        }
        float[][] values = Marked.luminance(clip, at, work);
        double mean = 0;
        for (float[] frame : values) {
            double sum = DARK;
            for (float v : frame) {
                sum += v;
            }
            mean += sum / at.length / n;
            float gain = (float) (at.length / sum);
            for (int k = 0; k < frame.length; k++) {
                frame[k] *= gain;
            }
        }
        float[] median = Marked.median(values, work);
        double[] distance = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = 0;
            for (int k = 0; k < at.length; k++) {
                sum += Math.abs((double) values[i][k] - median[k]);
            }
            distance[i] = mean < DARK ? 0 : sum / at.length;
        }
        int best = 0;
        for (int i = 1; i < n; i++) {
            best = distance[i] < distance[best] ? i : best;
        }
        return new Lull(best, distance[best], Quantiles.median(distance.clone(), n));
    }
}
