package ebblight.core.motion;

/**
 * The light of some pixels over time, pixel by pixel: what the statistics of one region are made from.
 *
 * <p>Holds {@code pixels × frames} samples, the frames of one pixel side by side.
 */
final class PixelSeries {

    /** Pixels are taken in even steps so that about this many remain (no more than twice as many). */
    private static final int ENOUGH_PIXELS = 5000;

    private final double[] timesSeconds;
    private final float[] samples;
    private final int pixels;

    private PixelSeries(double[] timesSeconds, float[] samples, int pixels) {
        this.timesSeconds = timesSeconds;
        this.samples = samples;
        this.pixels = pixels;
    }

    /**
     * The series of the given pixels.
     *
     * @param frames one plane of luminance a frame
     * @param timesSeconds the instant of each frame, increasing
     * @param at indices into a plane
     */
    static PixelSeries of(float[][] frames, double[] timesSeconds, int[] at) {
        int n = frames.length;
        if (n < 2 || n != timesSeconds.length || at.length == 0) {
            throw new IllegalArgumentException("need two frames or more, a time for each, and a pixel or more; had " + n
                    + " frames, " + timesSeconds.length + " times, " + at.length + " pixels");
        }
        float[] samples = new float[Math.multiplyExact(at.length, n)];
        for (int i = 0; i < n; i++) {
            float[] frame = frames[i];
            for (int p = 0, q = i; p < at.length; p++, q += n) {
                samples[q] = frame[at[p]];
            }
        }
        return new PixelSeries(timesSeconds, samples, at.length);
    }

    /** The series of the pixels where {@code share} is above one half, thinned evenly when they are very many. */
    static PixelSeries where(float[] share, float[][] frames, double[] timesSeconds) {
        return of(frames, timesSeconds, thinned(share));
    }

    /** Indices of the pixels where {@code share} is above one half, thinned evenly to 5000 to 9999 when more. */
    static int[] thinned(float[] share) {
        int count = 0;
        for (float s : share) {
            count += s > 0.5f ? 1 : 0;
        }
        int step = Math.max(1, count / ENOUGH_PIXELS);
        int[] at = new int[(count + step - 1) / step];
        for (int p = 0, seen = 0; p < share.length; p++) {
            if (share[p] > 0.5f) {
                if (seen % step == 0) {
                    at[seen / step] = p;
                }
                seen++;
            }
        }
        return at;
    }

    int pixels() {
        return pixels;
    }

    int frames() {
        return timesSeconds.length;
    }

    double timeSeconds(int frame) {
        return timesSeconds[frame];
    }

    /** Mean time from one frame to the next, in seconds. */
    double spacingSeconds() {
        int n = timesSeconds.length;
        return (timesSeconds[n - 1] - timesSeconds[0]) / (n - 1);
    }

    float sample(int pixel, int frame) {
        return samples[pixel * timesSeconds.length + frame];
    }

    /** Mean over all pixels and frames. */
    double mean() {
        double sum = 0;
        for (float s : samples) {
            sum += s;
        }
        return sum / samples.length;
    }
}
