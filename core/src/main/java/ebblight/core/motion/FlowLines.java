package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;
import java.util.Arrays;

/**
 * The exposure time at which running water draws its lines: long enough that foam traces its way, short enough that
 * the ways do not cover each other. Of the mean of frames over each time, the structure tensor tells how directed
 * the texture is; the score is the directed share of its energy, Σ(λ₁ − λ₂) / Σ(λ₁ + λ₂), times the root of the
 * contrast that is left.
 *
 * @param seconds where the score is largest; 0 when no time draws lines
 * @param fromSeconds shortest time with at least 95 % of that score
 * @param toSeconds longest such time
 */
public record FlowLines(double seconds, double fromSeconds, double toSeconds) {

    /** No time of the clip draws lines. */
    static final FlowLines NONE = new FlowLines(0, 0, 0);

    private static final double NEARLY = 0.95;

    /** Lines must stand out by this much over a single frame. */
    private static final double LEAST_GAIN = 1.02;

    private static final double LONGEST_SECONDS = 4;
    private static final double THIRD_OF_STOP = 1.2599210498948732;
    private static final int MOST_TIMES = 41;
    private static final int MOMENTS = 6;
    private static final double SIGMA = 3;

    static FlowLines of(LuminanceFrames frames, float[] mask, Work work) {
        double spacing = frames.spacingSeconds();
        double longest = Math.min(LONGEST_SECONDS, frames.lengthSeconds() / 2);
        if (spacing <= 0 || longest < 4 * spacing) {
            return NONE;
        }
        int[] counts = counts(spacing, longest);
        double[] scores = new double[counts.length];
        Inside inside = Inside.of(frames, mask);
        // The longest first: it is the most work.
        work.forEach(counts.length, k -> {
            int last = counts.length - 1 - k;
            scores[last] = inside.score(counts[last]);
        });
        int best = 0;
        for (int k = 1; k < counts.length; k++) {
            best = scores[k] > scores[best] ? k : best;
        }
        if (best == 0 || scores[best] < LEAST_GAIN * scores[0]) {
            return NONE;
        }
        int from = best;
        int to = best;
        for (int k = 1; k < counts.length; k++) {
            if (scores[k] >= NEARLY * scores[best]) {
                from = Math.min(from, k);
                to = Math.max(to, k);
            }
        }
        return new FlowLines(counts[best] * spacing, counts[from] * spacing, counts[to] * spacing);
    }

    /** How many frames each exposure takes: a single one, then thirds of a stop from two frames on. */
    private static int[] counts(double spacing, double longest) {
        int[] counts = new int[MOST_TIMES];
        counts[0] = 1;
        int n = 1;
        for (double t = 2 * spacing; t <= longest && n < MOST_TIMES; t *= THIRD_OF_STOP) {
            int count = (int) Rounding.even(t / spacing);
            if (count > counts[n - 1]) {
                counts[n++] = count;
            }
        }
        return Arrays.copyOf(counts, n);
    }

    /** The frames round the part alone: what lies beyond the reach of the blur does not count. */
    private record Inside(LuminanceFrames frames, float[] mask, int left, int top, int width, int height) {

        private static final int REACH = (int) (4 * SIGMA) + 2;

        static Inside of(LuminanceFrames frames, float[] mask) {
            int w = frames.width();
            int h = frames.height();
            int left = w;
            int right = -1;
            int top = h;
            int bottom = -1;
            for (int p = 0; p < mask.length; p++) {
                if (mask[p] > 0) {
                    left = Math.min(left, p % w);
                    right = Math.max(right, p % w);
                    top = Math.min(top, p / w);
                    bottom = p / w;
                }
            }
            left = Math.max(0, left - REACH);
            top = Math.max(0, top - REACH);
            int width = Math.max(1, Math.min(w, right + REACH + 1) - left);
            int height = Math.max(1, Math.min(h, bottom + REACH + 1) - top);
            float[] cut = new float[width * height];
            for (int y = 0; y < height; y++) {
                System.arraycopy(mask, (y + top) * w + left, cut, y * width, width);
            }
            return new Inside(frames, cut, left, top, width, height);
        }

        /** Mean score of a few exposures of {@code count} frames spread over the clip. */
        double score(int count) {
            int moments = Math.max(1, Math.min(MOMENTS, frames.count() / count));
            double sum = 0;
            for (int m = 0; m < moments; m++) {
                int start = moments == 1 ? 0 : m * (frames.count() - count) / (moments - 1);
                sum += directed(mean(start, start + count), mask, width, height);
            }
            return sum / moments;
        }

        private float[] mean(int from, int to) {
            double[] sum = new double[width * height];
            for (int i = from; i < to; i++) {
                float[] frame = frames.frame(i);
                for (int y = 0; y < height; y++) {
                    int row = (y + top) * frames.width() + left;
                    for (int x = 0; x < width; x++) {
                        sum[y * width + x] += frame[row + x];
                    }
                }
            }
            float[] mean = new float[sum.length];
            for (int p = 0; p < mean.length; p++) {
                mean[p] = (float) (sum[p] / (to - from));
            }
            return mean;
        }
    }

    private static double directed(float[] plane, float[] mask, int w, int h) {
        int n = plane.length;
        float[] xx = new float[n];
        float[] xy = new float[n];
        float[] yy = new float[n];
        for (int y = 1; y < h - 1; y++) {
            for (int x = 1; x < w - 1; x++) {
                int p = y * w + x;
                double gx = (plane[p + 1] - (double) plane[p - 1]) / 2;
                double gy = (plane[p + w] - (double) plane[p - w]) / 2;
                xx[p] = (float) (gx * gx * mask[p]);
                xy[p] = (float) (gx * gy * mask[p]);
                yy[p] = (float) (gy * gy * mask[p]);
            }
        }
        float[] scratch = new float[n];
        Blur.gaussian(xx, xx, scratch, w, h, SIGMA);
        Blur.gaussian(xy, xy, scratch, w, h, SIGMA);
        Blur.gaussian(yy, yy, scratch, w, h, SIGMA);
        double directed = 0;
        double all = 1e-12;
        for (int p = 0; p < n; p++) {
            if (mask[p] > 0.5f) {
                double d = xx[p] - (double) yy[p];
                directed += Math.sqrt(d * d + 4.0 * xy[p] * xy[p]); // λ₁ − λ₂
                all += xx[p] + (double) yy[p];
            }
        }
        return directed / all * Math.sqrt(Math.sqrt(all));
    }
}
