package ebblight.imaging;

import java.util.List;
import java.util.OptionalDouble;

/** Receives the frames of a source in order, a few at a time so that they can be worked on at once. */
interface FrameVisitor {

    /** Whether the frame at this instant is wanted: asked in order, of a clip before anything costly is done with it. */
    default boolean wants(double seconds) {
        return true;
    }

    /** True once no further frame is wanted. */
    default boolean enough() {
        return false;
    }

    /** The next frames, which may be overwritten once this returns. */
    void take(List<Arrival> frames);

    /**
     * A frame and where it comes from.
     *
     * @param index number of the frame in its source, repeats included
     * @param seconds instant of the frame; not a number when unknown
     * @param exposureSeconds its exposure time, when known
     */
    record Arrival(int index, double seconds, OptionalDouble exposureSeconds, DecodedFrame frame) {}
}
