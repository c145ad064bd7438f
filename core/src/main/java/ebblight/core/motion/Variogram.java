package ebblight.core.motion;

import ebblight.core.numeric.Rounding;
import java.util.Arrays;

/**
 * How much of a region's texture is left in the mean over a block of time, measured inside the clip: half the mean
 * square difference of two block means that lie far apart in the clip, over all pixels and all such pairs, less
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

    private static final int BLOCK_LENGTHS = 14;

    private final double[] blockSeconds;
    private final double[] variance;
    private final double[] aboutClipMean;
    private final double noiseVariance;
    private final double lengthSeconds;
    private final double spacingSeconds;

    private Variogram(
            double[] blockSeconds,
            double[] variance,
            double[] aboutClipMean,
            double noiseVariance,
            double lengthSeconds,
            double spacingSeconds) {
        this.blockSeconds = blockSeconds;
        this.variance = variance;
        this.aboutClipMean = aboutClipMean;
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
        double[] aboutClipMean = new double[intervals.length];
        int measured = 0;
        for (int interval : intervals) {
            FarBlocks blocks = FarBlocks.of(series, interval);
            if (blocks.pairs() > 0) {
                seconds[measured] = blocks.meanSeconds();
                FarBlocks.Scatter scatter = blocks.scatter();
                variance[measured] = scatter.halfSquaredDifference() - noiseVariance * blocks.noiseShare();
                aboutClipMean[measured] =
                        scatter.squareAboutClipMean() - noiseVariance * blocks.noiseShareAboutClipMean();
                measured++;
            }
        }
        return new Variogram(
                Arrays.copyOf(seconds, measured),
                Arrays.copyOf(variance, measured),
                Arrays.copyOf(aboutClipMean, measured),
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
            int n = (int) Rounding.even(4 * StrictMath.exp(k * logStep));
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

    /**
     * Variance of a mean over block {@code k} about the mean of the clip, noise taken off. It uses all blocks and
     * scatters less, but the clip's own mean has taken away the variance of a mean over the whole clip.
     */
    double varianceAboutClipMean(int k) {
        return aboutClipMean[k];
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
}
