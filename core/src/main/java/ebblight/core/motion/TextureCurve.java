package ebblight.core.motion;

/** R(T): what is left of a region's texture at any exposure time. */
interface TextureCurve {

    /** V(0): variance in time of a pixel's luminance, noise taken off; 0 where noise hides it. */
    double varianceAtOnce();

    /** Variance of a mean over {@code seconds}, squared luminance, as the frames show it: the most likely value. */
    double variance(double seconds);

    /** Whether the region moves visibly above the noise. */
    boolean seen();

    /** Longest exposure time that the frames themselves show, in seconds. */
    double measuredToSeconds();

    /** Whether the variance of a mean already falls as 1/T at that time. */
    boolean resolved();

    /** Whether frames lie so far apart that movement between them went unseen. */
    boolean coarse();

    /** τ in V(T) → V(0)·2τ/T, in seconds, of the most likely curve; 0 when nothing moves visibly. */
    double correlationSeconds();

    /** What is left at {@code seconds}, with its likely range. */
    Remaining at(double seconds);
}
