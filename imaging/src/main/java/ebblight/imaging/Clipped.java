package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.OptionalDouble;

/** How much of a picture is clipped at full size. */
public final class Clipped {

    /** A sample this near the largest code holds no more light: JPEG moves clipped samples by a code or two. */
    private static final double FULL = 0.99;

    private Clipped() {}

    /** Share of the pixels of the first frame in which a colour is at its end. */
    public static double fraction(FrameSource source, Work work) throws IOException {
        double[] share = new double[1];
        source.visit(
                new FrameVisitor() {
                    @Override
                    public boolean frame(int index, double seconds, OptionalDouble exposure, DecodedFrame frame) {
                        share[0] = of(frame);
                        return false;
                    }
                },
                work);
        return share[0];
    }

    private static double of(DecodedFrame frame) {
        int limit = (int) (FULL * ((1 << frame.bits()) - 1));
        long clipped = 0;
        long pixels = (long) frame.width() * frame.height();
        for (int i = 0; i < frame.samples(); i += 3) {
            boolean full = frame.code(i) >= limit || frame.code(i + 1) >= limit || frame.code(i + 2) >= limit;
            clipped += full ? 1 : 0;
        }
        return clipped / (double) pixels;
    }
}
