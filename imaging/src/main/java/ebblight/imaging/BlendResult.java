package ebblight.imaging;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A blended picture and what is to be said of it.
 *
 * @param layers what became of each layer, in order
 * @param facts facts of the first frame
 */
public record BlendResult(
        CodedPicture picture,
        List<Layer> layers,
        int frames,
        List<Skipped> skipped,
        OptionalDouble seconds,
        FrameFacts facts,
        List<String> warnings) {

    /**
     * One layer.
     *
     * @param frames that went into it
     * @param seconds time that they gathered light, when known
     * @param gaps times without exposure between them, when known
     * @param gains by what its red, green and blue light was multiplied to match the others
     * @param mask where it shows, one byte a pixel, 255 all of it
     */
    public record Layer(
            int frames, OptionalDouble seconds, Optional<StackResult.Gaps> gaps, double[] gains, byte[] mask) {}
}
