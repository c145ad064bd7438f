package ebblight.imaging;

import java.util.OptionalDouble;

/** Receives the frames of a source one after the other, in order. */
interface FrameVisitor {

    /**
     * One frame; it may be overwritten once this returns.
     *
     * @param index number of the frame in its source, repeats included
     * @param seconds instant of the frame
     * @param exposureSeconds its exposure time, when known
     * @return false to receive no more
     */
    boolean frame(int index, double seconds, OptionalDouble exposureSeconds, DecodedFrame frame);
}
