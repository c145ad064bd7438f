package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import java.util.Arrays;

/**
 * People and cars that pass in front of what stands: how much of the time a place is covered, and how strongly. The
 * mean over a long time keeps {@code coveredShare · contrast} of them as a veil, which no longer time removes.
 *
 * @param coveredShare mean share of time that a place is covered, 0 to 1, over the places that ever are
 * @param contrast mean difference from the uncovered light, as a share of it
 */
public record Passing(double coveredShare, double contrast) {

    static final Passing NONE = new Passing(0, 0);

    private static final double DEVIATIONS = 4;
    private static final double LEAST_DIFFERENCE = 0.1;
    private static final double EVER = 0.02;

    /** A tenth of the clip at each end tells what a place returns to. */
    private static final int FEW = 10;

    /** What passes over the pixels that {@code mask} marks; their median in time is what is uncovered, or what they return to. */
    static Passing of(LuminanceFrames frames, float[] mask, NoiseModel noise) {
        int[] at = PixelSeries.thinned(mask);
        int n = frames.count();
        if (at.length == 0 || n < 5) {
            return NONE;
        }
        float[] values = new float[n];
        double share = 0;
        double contrast = 0;
        int places = 0;
        for (int p : at) {
            for (int i = 0; i < n; i++) {
                values[i] = frames.frame(i)[p];
            }
            Passing here = at(values, noise);
            if (here.coveredShare > EVER) {
                share += here.coveredShare;
                contrast += here.contrast;
                places++;
            }
        }
        return places == 0 ? NONE : new Passing(share / places, contrast / places);
    }

    /** What passes over one place. */
    private static Passing at(float[] values, NoiseModel noise) {
        double bare = uncovered(values, values.length, noise);
        double limit = limit(bare, noise);
        int covered = 0;
        double difference = 0;
        for (float v : values) {
            double d = Math.abs(v - bare);
            if (d > limit) {
                covered++;
                difference += d;
            }
        }
        return covered == 0
                ? NONE
                : new Passing(covered / (double) values.length, difference / covered / Math.max(bare, 1e-4));
    }

    /**
     * What a place shows when nobody is there: its median, unless it begins and ends with another light and goes through
     * the median only between, as where somebody stands for most of the clip.
     */
    private static double uncovered(float[] values, int n, NoiseModel noise) {
        double median = Quantiles.median(values, n);
        int few = Math.max(2, n / FEW);
        float[] start = Arrays.copyOfRange(values, 0, few);
        float[] end = Arrays.copyOfRange(values, n - few, n);
        double first = Quantiles.median(start, few);
        double last = Quantiles.median(end, few);
        double limit = limit(median, noise);
        boolean returns =
                Math.abs(first - last) <= limit && Math.abs(first - median) > limit && Math.abs(last - median) > limit;
        return returns ? (first + last) / 2 : median;
    }

    private static double limit(double light, NoiseModel noise) {
        return Math.max(DEVIATIONS * Math.sqrt(noise.at(light)), LEAST_DIFFERENCE * light);
    }

    /** What a long exposure keeps of them for ever, as a share of the uncovered light. */
    public double veil() {
        return coveredShare * contrast;
    }
}
