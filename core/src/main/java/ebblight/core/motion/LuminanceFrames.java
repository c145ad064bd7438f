package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/** The luminance of all frames of a clip with the change of light taken out; linear, 1 = white. */
final class LuminanceFrames {

    private static final int MEDIAN_FRAMES = 30;

    private final int width;
    private final int height;
    private final double[] timesSeconds;
    private final float[][] frames;
    private final LightDrift drift;

    private LuminanceFrames(int width, int height, double[] timesSeconds, float[][] frames, LightDrift drift) {
        this.width = width;
        this.height = height;
        this.timesSeconds = timesSeconds;
        this.frames = frames;
        this.drift = drift;
    }

    /** The frames of {@code clip} as they are. */
    static float[][] raw(Clip clip, Work work) {
        float[][] frames = new float[clip.frames()][clip.width() * clip.height()];
        work.forEach(frames.length, i -> clip.luminance(i, frames[i]));
        return frames;
    }

    /** The frames of {@code clip}, each divided by its gain. */
    static LuminanceFrames of(Clip clip, Work work) {
        float[][] frames = raw(clip, work);
        double[] times = new double[frames.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = clip.timeSeconds(i);
        }
        LightDrift drift = LightDrift.of(frames, clip.width(), clip.height(), times);
        float[] gain = drift.gain();
        work.forEach(frames.length, i -> {
            float[] frame = frames[i];
            double scale = 1.0 / gain[i];
            for (int p = 0; p < frame.length; p++) {
                frame[p] = (float) (frame[p] * scale);
            }
        });
        return new LuminanceFrames(clip.width(), clip.height(), times, frames, drift);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int pixels() {
        return width * height;
    }

    int count() {
        return frames.length;
    }

    float[] frame(int i) {
        return frames[i];
    }

    float[][] all() {
        return frames;
    }

    double[] timesSeconds() {
        return timesSeconds;
    }

    /** Mean time from one frame to the next in seconds; 0 for a single frame. */
    double spacingSeconds() {
        int n = frames.length;
        return n < 2 ? 0 : (timesSeconds[n - 1] - timesSeconds[0]) / (n - 1);
    }

    double lengthSeconds() {
        return frames.length * spacingSeconds();
    }

    LightDrift drift() {
        return drift;
    }

    /** Mean of the frames {@code from} (inclusive) to {@code to} (exclusive). */
    float[] mean(int from, int to) {
        double[] sum = new double[pixels()];
        for (int i = from; i < to; i++) {
            float[] frame = frames[i];
            for (int p = 0; p < sum.length; p++) {
                sum[p] += frame[p];
            }
        }
        float[] mean = new float[sum.length];
        for (int p = 0; p < sum.length; p++) {
            mean[p] = (float) (sum[p] / (to - from));
        }
        return mean;
    }

    /** Variance in time of every pixel (divided by n − 1; 0 for one frame). */
    float[] variance(float[] mean) {
        double[] sum = new double[pixels()];
        for (float[] frame : frames) {
            for (int p = 0; p < sum.length; p++) {
                double d = frame[p] - mean[p];
                sum[p] += d * d;
            }
        }
        float[] variance = new float[sum.length];
        for (int p = 0; p < sum.length; p++) {
            variance[p] = (float) (sum[p] / Math.max(1, frames.length - 1));
        }
        return variance;
    }

    /** Median in time of every pixel, over about thirty frames spread over the clip. */
    float[] median(Work work) {
        int step = Math.max(1, frames.length / MEDIAN_FRAMES);
        int used = (frames.length + step - 1) / step;
        float[] median = new float[pixels()];
        work.forEach(height, y -> {
            float[] values = new float[used];
            for (int p = y * width; p < (y + 1) * width; p++) {
                for (int k = 0; k < used; k++) {
                    values[k] = frames[k * step][p];
                }
                median[p] = (float) Quantiles.median(values, used);
            }
        });
        return median;
    }
}
