package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;

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

    /** What passes over the pixels that {@code mask} marks; their median in time is what is uncovered. */
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
            double median = Quantiles.median(values, n);
            double limit = Math.max(DEVIATIONS * Math.sqrt(noise.at(median)), LEAST_DIFFERENCE * median);
            int covered = 0;
            double difference = 0;
            for (float v : values) {
                double d = Math.abs(v - median);
                if (d > limit) {
                    covered++;
                    difference += d;
                }
            }
            if (covered > EVER * n) {
                share += covered / (double) n;
                contrast += difference / covered / Math.max(median, 1e-4);
                places++;
            }
        }
        return places == 0 ? NONE : new Passing(share / places, contrast / places);
    }

    /** What a long exposure keeps of them for ever, as a share of the uncovered light. */
    public double veil() {
        return coveredShare * contrast;
    }
}
