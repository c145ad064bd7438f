package ebblight.core.motion;

import ebblight.core.numeric.Work;

/**
 * Gives a swaying part what it reaches only now and then: leaves that pass before an even sky change the light there as
 * glints on water do, but the sky behind them rests between, as water never does. Such an area counts as swaying where it borders on a swaying part.
 */
final class SwayRims {

    /** At rest: within so many deviations of the noise of what a place mostly shows. */
    private static final double DEVIATIONS = 3;

    /** So much more of the time than light that changes all the time by as much would. */
    private static final double RESTS = 0.3;

    private static final double LEAST_BORDER = 0.15;

    private SwayRims() {}

    /**
     * Share of the frames in which a place shows its median, less the share that a normal distribution of the same
     * variance has there, −1 to 1. Normal: P(|x| < u) ≈ √(1 − exp(−2u² / π)) to 0.01 (Pólya 1945, from memory).
     */
    static float[] rest(LuminanceFrames frames, float[] median, NoiseModel noise, Work work) {
        int w = frames.width();
        float[] rest = new float[frames.pixels()];
        work.forEach(frames.height(), y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                double limit = DEVIATIONS * Math.sqrt(noise.at(median[p]));
                int count = 0;
                double squares = 1e-15;
                for (int i = 0; i < frames.count(); i++) {
                    double d = Math.abs(frames.frame(i)[p] - (double) median[p]);
                    count += d <= limit ? 1 : 0;
                    squares += d * d;
                }
                double u2 = limit * limit * frames.count() / squares;
                double normal = Math.sqrt(1 - StrictMath.exp(-2 * u2 / Math.PI));
                rest[p] = (float) ((double) count / frames.count() - normal);
            }
        });
        return rest;
    }

    static SoftRegions apply(SoftRegions regions, float[] rest) {
        int w = regions.width();
        int h = regions.height();
        byte[] labels = regions.labels();
        Areas areas = Areas.of(labels, w, h);
        double[] resting = new double[areas.count()];
        int[] border = new int[areas.count()];
        int[] swaying = new int[areas.count()];
        for (int p = 0; p < labels.length; p++) {
            resting[areas.at(p)] += rest[p];
            if (p % w < w - 1) {
                touch(areas, p, p + 1, border, swaying);
            }
            if (p < labels.length - w) {
                touch(areas, p, p + w, border, swaying);
            }
        }
        float[][] share = new float[RegionModel.KINDS][];
        for (int c = 0; c < share.length; c++) {
            share[c] = regions.all()[c].clone();
        }
        float[] water = share[Kind.FLOWING.column()];
        float[] sway = share[Kind.SWAYING.column()];
        for (int p = 0; p < labels.length; p++) {
            int a = areas.at(p);
            if (areas.label(a) == Kind.FLOWING.column()
                    && resting[a] > RESTS * areas.size(a)
                    && swaying[a] > LEAST_BORDER * border[a]) {
                sway[p] += water[p];
                water[p] = 0;
            }
        }
        return new SoftRegions(w, h, share);
    }

    private static void touch(Areas areas, int p, int q, int[] border, int[] swaying) {
        int a = areas.at(p);
        int b = areas.at(q);
        if (a != b) {
            border[a]++;
            border[b]++;
            swaying[a] += areas.label(b) == Kind.SWAYING.column() ? 1 : 0;
            swaying[b] += areas.label(a) == Kind.SWAYING.column() ? 1 : 0;
        }
    }
}
