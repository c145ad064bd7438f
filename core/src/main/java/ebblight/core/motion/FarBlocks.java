package ebblight.core.motion;

import ebblight.core.numeric.Rounding;

/** Blocks of one length in a clip, by their first frames, and which pairs of them are far enough apart. */
final class FarBlocks {

    /**
     * Starts of the two blocks of a pair lie at least this share of the clip apart, and never so near that the blocks
     * overlap. With one half, chop of 8 m/s was told with a quarter more scatter, as fewer pairs were left.
     */
    private static final double SEPARATION = 0.35;

    private static final int MOST_BLOCKS = 40;

    private final PixelSeries series;
    private final int interval;
    private final int[] starts;
    private final int[] firstFar;
    private final long pairs;
    private final double meanSeconds;
    private final double noiseShare;

    private FarBlocks(
            PixelSeries series,
            int interval,
            int[] starts,
            int[] firstFar,
            long pairs,
            double meanSeconds,
            double noiseShare) {
        this.series = series;
        this.interval = interval;
        this.starts = starts;
        this.firstFar = firstFar;
        this.pairs = pairs;
        this.meanSeconds = meanSeconds;
        this.noiseShare = noiseShare;
    }

    /** The blocks of {@code interval} frame intervals, 40 at most, spread evenly over the clip. */
    static FarBlocks of(PixelSeries series, int interval) {
        int frames = series.frames();
        int[] starts = starts(frames, interval);
        double apart = SEPARATION * frames * series.spacingSeconds() * (1 - 1e-9);
        int[] firstFar = new int[starts.length];
        double seconds = 0;
        double noise = 0;
        long pairs = 0;
        for (int i = 0; i < starts.length; i++) {
            int j = i;
            while (j < starts.length
                    && (starts[j] <= starts[i] + interval
                            || series.timeSeconds(starts[j]) - series.timeSeconds(starts[i]) < apart)) {
                j++;
            }
            firstFar[i] = j;
            for (; j < starts.length; j++) {
                seconds += duration(series, starts[i], interval) + duration(series, starts[j], interval);
                noise += noiseShare(series, starts[i], interval) + noiseShare(series, starts[j], interval);
                pairs++;
            }
        }
        return new FarBlocks(series, interval, starts, firstFar, pairs, seconds / (2 * pairs), noise / (2 * pairs));
    }

    private static int[] starts(int frames, int interval) {
        int last = frames - 1 - interval;
        int wanted = Math.min(MOST_BLOCKS, frames - interval);
        int[] starts = new int[wanted];
        for (int i = 0; i < wanted; i++) {
            starts[i] = (int) Rounding.even(i * (double) last / (wanted - 1));
        }
        return starts;
    }

    private static double duration(PixelSeries series, int start, int interval) {
        return series.timeSeconds(start + interval) - series.timeSeconds(start);
    }

    /** Sum of the squared weights that the frames of a block carry. */
    private static double noiseShare(PixelSeries series, int start, int interval) {
        if (interval == 0) {
            return 1;
        }
        double twice = 2 * duration(series, start, interval);
        double sum = 0;
        for (int i = start; i <= start + interval; i++) {
            double before = i == start ? 0 : series.timeSeconds(i) - series.timeSeconds(i - 1);
            double after = i == start + interval ? 0 : series.timeSeconds(i + 1) - series.timeSeconds(i);
            double weight = (before + after) / twice;
            sum += weight * weight;
        }
        return sum;
    }

    /** Number of pairs of blocks far enough apart; 0 when the frames' times leave none. */
    long pairs() {
        return pairs;
    }

    /** Mean length of the blocks that take part, in seconds. */
    double meanSeconds() {
        return meanSeconds;
    }

    /** Share of one frame's noise variance that is left in a block mean. */
    double noiseShare() {
        return noiseShare;
    }

    /**
     * How the means of the blocks scatter, over all pixels.
     *
     * @param halfSquaredDifference half the mean square difference over all far pairs
     * @param squareAboutClipMean mean square over all blocks of what a block mean is off from the mean of the clip
     */
    record Scatter(double halfSquaredDifference, double squareAboutClipMean) {}

    /**
     * The scatter of the blocks, of which pairs are far apart. The far partners of a block are all blocks from one on,
     * so running sums from the end replace the loop over pairs.
     */
    Scatter scatter() {
        double[] integral = new double[series.frames()];
        double[] means = new double[starts.length];
        double[] sums = new double[starts.length + 1];
        double[] squares = new double[starts.length + 1];
        double length = duration(series, 0, integral.length - 1);
        double farPairs = 0;
        double aboutMean = 0;
        for (int p = 0; p < series.pixels(); p++) {
            blockMeans(p, integral, means);
            for (int j = starts.length - 1; j >= 0; j--) {
                sums[j] = sums[j + 1] + means[j];
                squares[j] = squares[j + 1] + means[j] * means[j];
            }
            double mean = integral[integral.length - 1] / length;
            for (int i = 0; i < starts.length; i++) {
                int far = firstFar[i];
                double m = means[i];
                farPairs += (starts.length - far) * m * m - 2 * m * sums[far] + squares[far];
                aboutMean += (m - mean) * (m - mean);
            }
        }
        return new Scatter(
                farPairs / (2.0 * pairs * series.pixels()), aboutMean / ((double) starts.length * series.pixels()));
    }

    /** Share of one frame's noise variance that is left in what a block mean is off from the mean of the whole clip. */
    double noiseShareAboutClipMean() {
        return noiseShare - noiseShare(series, 0, series.frames() - 1);
    }

    /** Means of one pixel over all blocks, less its first sample to keep the squares small. */
    private void blockMeans(int pixel, double[] integral, double[] means) {
        double origin = series.sample(pixel, 0);
        double previous = 0;
        integral[0] = 0;
        for (int i = 1; i < integral.length; i++) {
            double now = series.sample(pixel, i) - origin;
            double dt = series.timeSeconds(i) - series.timeSeconds(i - 1);
            integral[i] = integral[i - 1] + 0.5 * (previous + now) * dt;
            previous = now;
        }
        for (int k = 0; k < starts.length; k++) {
            int from = starts[k];
            means[k] = interval == 0
                    ? series.sample(pixel, from) - origin
                    : (integral[from + interval] - integral[from]) / duration(series, from, interval);
        }
    }
}
