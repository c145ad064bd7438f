package ebblight.imaging;

/**
 * One of the pictures that a blend is made of, and where it shows.
 *
 * @param as which value of each pixel is taken of its frames
 * @param fromSeconds frames that begin earlier than this after the first one are left out
 * @param untilSeconds those that begin then or later are left out
 * @param frame the only frame that is taken, by its number in the source; −1 for all
 * @param share where it shows, 0 to 1, at survey size
 * @param edge width over which it runs into its neighbours, as a fraction of the picture's width; 0: as the picture's own
 *     edges are
 */
public record BlendLayer(
        StackOptions.As as, double fromSeconds, double untilSeconds, int frame, float[] share, double edge) {

    /** Whether it is the mean of all frames. */
    boolean isWhole() {
        return as == StackOptions.As.MEAN && fromSeconds <= 0 && untilSeconds == Double.POSITIVE_INFINITY && frame < 0;
    }

    FramePass.Take take() {
        return new FramePass.Take(as, fromSeconds, untilSeconds, frame);
    }
}
