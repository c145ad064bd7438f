package ebblight.core.blend;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/**
 * For what share of the time people and cars stand before each place: a place is covered in a frame when its luminance
 * differs from its median in time by more than 10 % and by more than six times the median of all such differences there,
 * which is how much noise alone changes it.
 *
 * @param share of the frames in which each pixel is covered, 0 to 1; 0 where nothing was asked
 * @param placesFraction share of the part's pixels that are ever covered
 * @param most the share of time of the place that is covered longest but for one pixel in a hundred
 * @param brighter whether what passes is mostly brighter than what it covers, as lamps are at night
 */
public record Covered(float[] share, double placesFraction, double most, boolean brighter) {

    private static final double LEAST_DIFFERENCE = 0.1;
    private static final double DEVIATIONS = 6;
    private static final double EVER = 0.02;
    private static final int STEPS = 1000;

    /** Looks at the pixels where {@code mask} is 1. */
    public static Covered of(Clip clip, float[] mask, Work work) {
        int[] at = Marked.pixels(mask);
        float[] share = new float[mask.length];
        int n = clip.frames();
        if (at.length == 0) {
            return new Covered(share, 0, 0, false);
        }
        float[][] values = Marked.luminance(clip, at, work);
        int[] brighter = new int[at.length];
        work.forEach(Marked.PIECES, piece -> {
            float[] row = new float[n];
            float[] away = new float[n];
            int to = Marked.end(piece, at.length);
            for (int k = Marked.end(piece - 1, at.length); k < to; k++) {
                for (int i = 0; i < n; i++) {
                    row[i] = values[i][k];
                }
                double median = Quantiles.median(row, n);
                for (int i = 0; i < n; i++) {
                    away[i] = (float) Math.abs(values[i][k] - median);
                }
                double limit = Math.max(LEAST_DIFFERENCE * median, DEVIATIONS * Quantiles.median(away, n));
                int covered = 0;
                for (int i = 0; i < n; i++) {
                    double difference = values[i][k] - median;
                    if (Math.abs(difference) > limit) {
                        covered++;
                        brighter[k] += difference > 0 ? 1 : -1;
                    }
                }
                share[at[k]] = (float) (covered / (double) n);
            }
        });
        int places = 0;
        long sign = 0;
        int[] histogram = new int[STEPS + 1];
        for (int k = 0; k < at.length; k++) {
            if (share[at[k]] > EVER) {
                places++;
                sign += Integer.signum(brighter[k]);
                histogram[(int) (STEPS * (double) share[at[k]])]++;
            }
        }
        int left = places / 100;
        int top = STEPS;
        while (top > 0 && left - histogram[top] >= 0) {
            left -= histogram[top--];
        }
        return new Covered(share, places / (double) at.length, places == 0 ? 0 : top / (double) STEPS, sign > 0);
    }
}
