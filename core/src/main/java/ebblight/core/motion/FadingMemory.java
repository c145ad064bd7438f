package ebblight.core.motion;

/**
 * Texture whose likeness to itself fades as exp(−s/τ). A mean over T keeps V(T)/V(0) = 2τ/T·(1 − τ/T·(1 − exp(−T/τ)))
 * of its variance (G. I. Taylor, Diffusion by continuous movements, 1922).
 */
final class FadingMemory {

    /** Above this τ/T the closed form loses its digits to cancellation; the first term of its series is exact enough. */
    private static final double LONG = 1e3;

    private FadingMemory() {}

    /** V(T)/V(0) for an exposure and a memory τ, both in seconds and above 0. */
    static double share(double seconds, double memorySeconds) {
        double x = memorySeconds / seconds;
        return x > LONG ? 1 - 1 / (3 * x) : 2 * x * (1 - x * (1 - StrictMath.exp(-1 / x)));
    }
}
