package ebblight.imaging;

import java.nio.file.Path;
import java.util.Optional;

/**
 * How frames are made into one picture.
 *
 * @param as which value of each pixel is taken
 * @param darks folder of dark frames to subtract
 * @param align by which parts frames are laid over the first one before stacking; absent where the camera stood
 * @param linear whether the picture is written as linear light
 */
public record StackOptions(As as, Optional<Path> darks, Optional<AlignOn> align, boolean linear) {

    /** Which value of each pixel is taken. */
    public enum As {
        /** The mean of the light: one long exposure. */
        MEAN,
        /** The brightest: light trails. */
        BRIGHTEST,
        /** The darkest. */
        DARKEST,
        /** The one in the middle: what stands there most of the time. */
        MEDIAN
    }

    /** A plain mean. */
    public static StackOptions mean() {
        return new StackOptions(As.MEAN, Optional.empty(), Optional.empty(), false);
    }
}
