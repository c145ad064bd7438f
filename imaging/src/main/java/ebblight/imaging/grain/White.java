package ebblight.imaging.grain;

/** The white part of a picture (Immerkær 1996): the mask [1 −2 1] by [1 −2 1], which slow changes do not pass. */
final class White {

    /** Sum of squares of the mask. */
    static final double SQUARES = 36;

    private White() {}

    /** The mask laid on {@code p} of a plane of {@code width}. */
    static double at(float[] plane, int p, int width) {
        return plane[p - width - 1]
                - 2.0 * plane[p - width]
                + plane[p - width + 1]
                - 2 * (plane[p - 1] - 2.0 * plane[p] + plane[p + 1])
                + plane[p + width - 1]
                - 2.0 * plane[p + width]
                + plane[p + width + 1];
    }
}
