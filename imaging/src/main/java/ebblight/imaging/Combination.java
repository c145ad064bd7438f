package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/** Frames made into one, as they come. */
interface Combination extends AutoCloseable {

    /** A frame whose light counts {@code gain} times. */
    record Part(DecodedFrame frame, double gain) {}

    /** Adds frames that all have the same size. */
    void add(List<Part> parts, Work work) throws IOException;

    /** Linear light of each sample of the result, 0 to 1. */
    IntToDoubleFunction light(Work work) throws IOException;

    @Override
    void close() throws IOException;

    /** The combination that takes {@code as} of up to {@code mostFrames} frames like {@code first}. */
    static Combination of(StackOptions.As as, DecodedFrame first, int mostFrames) throws IOException {
        return as == StackOptions.As.MEDIAN
                ? MedianStore.open(first.samples(), first.profile(), mostFrames)
                : new Accumulator(first.width(), first.height(), as, mostFrames);
    }
}
