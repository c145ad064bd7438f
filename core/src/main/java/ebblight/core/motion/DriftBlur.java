package ebblight.core.motion;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;

/**
 * The mean of a plane that is carried along a steady flow: over 2t it is half the mean over t and half the same mean
 * carried on by t, so that long streaks take a logarithmic number of passes.
 */
final class DriftBlur {

    private static final double STEP_PIXELS = 0.7;
    private static final int MOST_DOUBLINGS = 10;

    private DriftBlur() {}

    /** Mean over {@code from} to {@code to} seconds of {@code plane} carried along {@code flow} for that long. */
    static float[] mean(float[] plane, Flow flow, double from, double to, Work work) {
        int doublings = 0;
        double way = flow.fastest() * (to - from);
        while (way / (1 << doublings) > STEP_PIXELS && doublings < MOST_DOUBLINGS) {
            doublings++;
        }
        double step = (to - from) / (1 << doublings);
        float[] mean = carried(plane, flow, from + step / 2, work);
        for (int k = 0; k < doublings; k++) {
            float[] later = carried(mean, flow, step * (1 << k), work);
            for (int p = 0; p < mean.length; p++) {
                mean[p] = (float) ((mean[p] + (double) later[p]) / 2);
            }
        }
        return mean;
    }

    private static float[] carried(float[] plane, Flow flow, double seconds, Work work) {
        int w = flow.width();
        int h = flow.height();
        double[] m = flow.back(seconds);
        float[] out = new float[plane.length];
        work.forEach(h, y -> {
            for (int x = 0; x < w; x++) {
                out[y * w + x] =
                        (float) Resample.mirrored(plane, w, h, m[0] * x + m[1] * y + m[2], m[3] * x + m[4] * y + m[5]);
            }
        });
        return out;
    }
}
