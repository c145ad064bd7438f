package ebblight.core.motion;

import java.util.Arrays;

/**
 * How much of a region's texture is left in the mean over a block of time, measured inside the clip: half the mean
 * square difference of two block means that lie at least half the clip apart, over all pixels and all such pairs, less
 * what sensor noise adds. Two far blocks share no texture, so half their squared difference is the variance of one
 * block mean about the scene's own long mean; the unknown long mean drops out, and no family of correlation functions
 * is assumed.
 *
 * <p>The mean of a block that runs from frame i to frame j is the integral of the straight lines between the frames,
 * by their real times, over its length (for even spacing: the ends at half weight). Block 0 is a single frame.
 */
final class Variogram {

    /** Blocks reach to this share of the clip. */
    private static final double LONGEST_BLOCK = 0.4;

    /** Starts of the two blocks of a pair lie at least this share of the clip apart. */
    private static final double SEPARATION = 0.5;

    private static final int MOST_BLOCKS = 40;
    private static final int BLOCK_LENGTHS = 14;

    private final double[] blockSeconds;
    private final double[] variance;
    private final double noiseVariance;
    private final double lengthSeconds;
    private final double spacingSeconds;

    private Variogram(
            double[] blockSeconds,
            double[] variance,
            double noiseVariance,
            double lengthSeconds,
            double spacingSeconds) {
        this.blockSeconds = blockSeconds;
        this.variance = variance;
        this.noiseVariance = noiseVariance;
        this.lengthSeconds = lengthSeconds;
        this.spacingSeconds = spacingSeconds;
    }

    /**
     * Measures the variogram.
     *
     * @param noiseVariance variance that sensor noise adds to one frame, in squared luminance, 0 or more
     */
    static Variogram of(PixelSeries series, double noiseVariance) {
        int[] intervals = intervals(series.frames());
        double[] seconds = new double[intervals.length];
        double[] variance = new double[intervals.length];
        int measured = 0;
        for (int interval : intervals) {
            Blocks blocks = Blocks.of(series, interval);
            if (blocks.pairs() > 0) {
                seconds[measured] = blocks.meanSeconds();
                variance[measured] = blocks.halfSquaredDifference(series) - noiseVariance * blocks.noiseShare();
                measured++;
            }
        }
        return new Variogram(
                Arrays.copyOf(seconds, measured),
                Arrays.copyOf(variance, measured),
                noiseVariance,
                series.frames() * series.spacingSeconds(),
                series.spacingSeconds());
    }

    /** Lengths of the blocks in frame intervals: 0 to 4, then fourteen in even ratios up to 0.4 of the clip. */
    private static int[] intervals(int frames) {
        int longest = Math.max(1, (int) (frames * LONGEST_BLOCK)) - 1;
        boolean[] wanted = new boolean[longest + 1];
        for (int n = 0; n <= Math.min(4, longest); n++) {
            wanted[n] = true;
        }
        double logStep = StrictMath.log(Math.max(5, longest) / 4.0) / (BLOCK_LENGTHS - 1);
        for (int k = 0; k < BLOCK_LENGTHS; k++) {
            int n = (int) Math.rint(4 * StrictMath.exp(k * logStep));
            if (n <= longest) {
                wanted[n] = true;
            }
        }
        int count = 0;
        for (boolean w : wanted) {
            count += w ? 1 : 0;
        }
        int[] intervals = new int[count];
        for (int n = 0, k = 0; n <= longest; n++) {
            if (wanted[n]) {
                intervals[k++] = n;
            }
        }
        return intervals;
    }

    /** Number of block lengths measured, 1 or more. */
    int size() {
        return blockSeconds.length;
    }

    /** Length of block {@code k} in seconds, increasing from 0. */
    double blockSeconds(int k) {
        return blockSeconds[k];
    }

    /** Variance of a mean over block {@code k}, squared luminance; may fall to 0 or below where noise hides it. */
    double variance(int k) {
        return variance[k];
    }

    /** Variance that noise added to a single frame and that was taken off. */
    double noiseVariance() {
        return noiseVariance;
    }

    /** Time that the clip stands for in seconds: frames × spacing. */
    double lengthSeconds() {
        return lengthSeconds;
    }

    /** Mean time from one frame to the next in seconds. */
    double spacingSeconds() {
        return spacingSeconds;
    }

    /** Blocks of one length, by their first frames, and which pairs of them are far enough apart. */
    private record Blocks(
            int interval, int[] starts, int[] firstFar, long pairs, double meanSeconds, double noiseShare) {

        static Blocks of(PixelSeries series, int interval) {
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
            return new Blocks(interval, starts, firstFar, pairs, seconds / (2 * pairs), noise / (2 * pairs));
        }

        private static int[] starts(int frames, int interval) {
            int last = frames - 1 - interval;
            int wanted = Math.min(MOST_BLOCKS, frames - interval);
            int[] starts = new int[wanted];
            for (int i = 0; i < wanted; i++) {
                starts[i] = (int) Math.rint(i * (double) last / (wanted - 1));
            }
            return starts;
        }

        private static double duration(PixelSeries series, int start, int interval) {
            return series.timeSeconds(start + interval) - series.timeSeconds(start);
        }

        /** Sum of the squared weights that the frames of a block carry: what is left of white noise. */
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

        /**
         * Half the mean square difference over all far pairs and all pixels. The far partners of a block are all
         * blocks from one on, so running sums from the end replace the loop over pairs.
         */
        double halfSquaredDifference(PixelSeries series) {
            int frames = series.frames();
            double[] integral = new double[frames];
            double[] means = new double[starts.length];
            double[] sums = new double[starts.length + 1];
            double[] squares = new double[starts.length + 1];
            double total = 0;
            for (int p = 0; p < series.pixels(); p++) {
                blockMeans(series, p, integral, means);
                for (int j = starts.length - 1; j >= 0; j--) {
                    sums[j] = sums[j + 1] + means[j];
                    squares[j] = squares[j + 1] + means[j] * means[j];
                }
                for (int i = 0; i < starts.length; i++) {
                    int far = firstFar[i];
                    double m = means[i];
                    total += (starts.length - far) * m * m - 2 * m * sums[far] + squares[far];
                }
            }
            return total / (2.0 * pairs * series.pixels());
        }

        /** Means of one pixel over all blocks, less its first sample to keep the squares small. */
        private void blockMeans(PixelSeries series, int pixel, double[] integral, double[] means) {
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
}
