package ebblight.core.motion;

/**
 * What the gaps between short frames hide. The mean of short frames keeps more texture than one exposure over the same
 * time, because light between the frames is missing from it: an upper bound. How much less the whole exposure keeps
 * follows from the memory of the texture, which the correlation of neighbouring frames tells.
 *
 * <p>For a memory that fades as exp(−s/τ) both are known: the exposure keeps V·2τ/T·(1 − τ/T·(1 − exp(−T/τ))) (Taylor
 * 1922), the mean of frames Δ apart V·(Δ/T)·(1 + ρ)/(1 − ρ) with ρ = exp(−Δ/τ). Where neighbouring frames have
 * nothing in common the memory is only known to be short: a twentieth to a third of the gap.
 *
 * @param spacingSeconds Δ
 * @param likelyMemory the most likely τ in seconds
 * @param leastMemory the shortest τ that the frames allow
 */
record Gaps(double spacingSeconds, double likelyMemory, double leastMemory) {

    /** Correlation of neighbouring frames is not known better than this. */
    private static final double CORRELATION_ERROR = 0.1;

    /** exp(−1/0.18): what a likely memory of 0.18 gaps leaves to the next frame. */
    private static final double LIKELY_FLOOR = 0.004;

    /** exp(−1/0.05). */
    private static final double LEAST_FLOOR = 2e-9;

    private static final double MOST = 0.999;

    /** The gaps between frames whose neighbours correlate by {@code correlation}. */
    static Gaps of(double spacingSeconds, double correlation) {
        return new Gaps(
                spacingSeconds,
                memory(spacingSeconds, correlation, LIKELY_FLOOR),
                memory(spacingSeconds, correlation - CORRELATION_ERROR, LEAST_FLOOR));
    }

    private static double memory(double spacing, double correlation, double floor) {
        return -spacing / StrictMath.log(Math.min(MOST, Math.max(floor, correlation)));
    }

    /** Most likely variance of a whole exposure over that of the frames' mean, 0 to 1. */
    double likely(double seconds) {
        return share(seconds, likelyMemory);
    }

    /** The least that share may be. */
    double least(double seconds) {
        return share(seconds, leastMemory);
    }

    private double share(double seconds, double memory) {
        if (!(seconds > 0) || !(spacingSeconds > 0)) {
            return 1;
        }
        double rho = StrictMath.exp(-spacingSeconds / memory);
        double far = 2 * memory / spacingSeconds * (1 - rho) / (1 + rho);
        if (seconds >= spacingSeconds) {
            double near = FadingMemory.share(spacingSeconds, memory) / ((1 + rho) / 2);
            return Math.min(1, far + (near - far) * spacingSeconds / seconds);
        }
        return Math.min(1, FadingMemory.share(seconds, memory) / (1 - (1 - rho) / 2 * seconds / spacingSeconds));
    }
}
