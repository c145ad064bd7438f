package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;
import java.util.Arrays;

/**
 * Short means of a clip inside the parts that may drift, as a share of the light around, less 1, with their times: what
 * drift is measured on.
 *
 * @param planes one a mean
 * @param times middle of each in seconds
 * @param window softened weight of the parts
 * @param weight weight of the parts, 0 to 1
 * @param samples the pixels that are compared
 */
record DriftMeans(
        float[][] planes, double[] times, float[] window, float[] weight, int[] samples, int width, int height) {

    private static final int MEANS = 12;
    private static final double SMOOTHING = 1.5;
    private static final double BROAD_OF_WIDTH = 1.0 / 16;

    /** Every second pixel of a row and every second row: the smoothing leaves little between them. */
    private static final int STEP = 2;

    private static final float LEAST_WINDOW = 0.02f;

    /** Luminance below which shares would only show noise. */
    private static final double DARK = 1e-3;

    /** Phases are compared in planes about this wide: finer ones cost more and the fit refines the answer anyway. */
    private static final int GUESS_WIDTH = 120;

    private static final int GUESSES = 4;

    static DriftMeans of(LuminanceFrames frames, float[] weight, Work work) {
        int w = frames.width();
        int h = frames.height();
        int size = Math.max(1, frames.count() / MEANS);
        int count = frames.count() / size;
        float[] window = new float[w * h];
        float[] broad = new float[w * h];
        float[] scratch = new float[w * h];
        Blur.gaussian(weight, window, scratch, w, h, 2);
        Blur.gaussian(weight, broad, scratch, w, h, w * BROAD_OF_WIDTH);
        float[][] planes = new float[count][];
        double[] times = new double[count];
        work.forEach(count, g -> {
            float[] mean = frames.mean(g * size, (g + 1) * size);
            float[] low = new float[w * h];
            float[] room = new float[w * h];
            for (int p = 0; p < low.length; p++) {
                low[p] = mean[p] * weight[p];
            }
            Blur.gaussian(low, low, room, w, h, w * BROAD_OF_WIDTH);
            for (int p = 0; p < low.length; p++) {
                double local = low[p] / (broad[p] + 1e-3);
                mean[p] = (float) ((mean[p] - local) / (local + DARK) * window[p]);
            }
            Blur.gaussian(mean, mean, room, w, h, SMOOTHING);
            planes[g] = mean;
            double sum = 0;
            for (int i = g * size; i < (g + 1) * size; i++) {
                sum += frames.timesSeconds()[i];
            }
            times[g] = sum / size;
        });
        return new DriftMeans(planes, times, window, weight, samples(window, w, h), w, h);
    }

    private static int[] samples(float[] window, int w, int h) {
        int[] at = new int[w * h / (STEP * STEP) + w + h];
        int n = 0;
        for (int y = 1; y < h - 1; y += STEP) {
            for (int x = 1; x < w - 1; x += STEP) {
                if (window[y * w + x] > LEAST_WINDOW) {
                    at[n++] = y * w + x;
                }
            }
        }
        return Arrays.copyOf(at, n);
    }

    /** What changed from each mean to the one {@code apart} later. */
    DriftMeans changes(int apart) {
        float[][] changes = new float[count() - apart][];
        double[] middle = new double[changes.length];
        for (int g = 0; g < changes.length; g++) {
            changes[g] = new float[planes[g].length];
            for (int p = 0; p < changes[g].length; p++) {
                changes[g][p] = planes[g + apart][p] - planes[g][p];
            }
            middle[g] = (times[g] + times[g + apart]) / 2;
        }
        return new DriftMeans(changes, middle, window, weight, samples, width, height);
    }

    int count() {
        return planes.length;
    }

    /** Mean time from one to the next in seconds. */
    double spacing() {
        return (times[times.length - 1] - times[0]) / (times.length - 1);
    }

    /** Time from mean {@code start} to the one {@code lag} later, in seconds. */
    double seconds(int start, int lag) {
        return times[start + lag] - times[start];
    }

    /** First means of the pairs that are compared at a lag: about four, spread evenly. */
    int[] starts(int lag) {
        int step = Math.max(1, (count() - lag) / 4);
        int[] starts = new int[(count() - lag + step - 1) / step];
        for (int k = 0; k < starts.length; k++) {
            starts[k] = k * step;
        }
        return starts;
    }

    /** Even drift from the phases of neighbouring means, to a few pixels. */
    Flow firstGuess() {
        int factor = Math.max(1, width / GUESS_WIDTH);
        int w = width / factor;
        int h = Math.max(1, height / factor);
        int pairs = Math.min(GUESSES, count() - 1);
        double[] u = new double[pairs];
        double[] v = new double[pairs];
        float[] first = new float[w * h];
        float[] second = new float[w * h];
        for (int k = 0; k < pairs; k++) {
            int i = k * (count() - 1) / pairs;
            Resample.area(planes[i], width, height, first, w, h);
            Resample.area(planes[i + 1], width, height, second, w, h);
            double[] shift = PhaseCorrelation.shift(first, second, w, h);
            u[k] = shift[0] * width / w / seconds(i, 1);
            v[k] = shift[1] * height / h / seconds(i, 1);
        }
        return new Flow(Quantiles.median(u, pairs), 0, 0, Quantiles.median(v, pairs), 0, 0, width, height);
    }
}
