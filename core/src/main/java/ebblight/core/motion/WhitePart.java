package ebblight.core.motion;

/**
 * What is white in space: a plane filtered by [1 −2 1] ⊗ [1 −2 1] / 6, which keeps the variance of white noise and
 * little of any picture (J. Immerkær, Fast noise variance estimation, 1996).
 */
final class WhitePart {

    private WhitePart() {}

    /** The filtered value at an index that is not on the border. */
    static double at(float[] plane, int p, int width) {
        double corners =
                plane[p - width - 1] + (double) plane[p - width + 1] + plane[p + width - 1] + plane[p + width + 1];
        double sides = plane[p - width] + (double) plane[p + width] + plane[p - 1] + plane[p + 1];
        return (corners - 2 * sides + 4.0 * plane[p]) / 6;
    }
}
