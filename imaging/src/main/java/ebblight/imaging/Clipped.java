package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.List;

/** How much of a picture is clipped at full size. */
public final class Clipped {

    /** A sample this near the largest code holds no more light: JPEG moves clipped samples by a code or two. */
    private static final double FULL = 0.99;

    private Clipped() {}

    /** Share of the pixels of the first frame in which a colour is at its end. */
    public static double fraction(FrameSource source, Work work) throws IOException {
        First first = new First();
        source.visit(first, work);
        return first.share;
    }

    private static final class First implements FrameVisitor {
        private double share = -1;
        private boolean chosen;

        @Override
        public boolean wants(double seconds) {
            boolean first = !chosen;
            chosen = true;
            return first;
        }

        @Override
        public boolean enough() {
            return chosen;
        }

        @Override
        public void take(List<Arrival> frames) {
            share = share < 0 ? of(frames.get(0).frame()) : share;
        }
    }

    private static double of(DecodedFrame frame) {
        int limit = (int) (FULL * ((1 << frame.bits()) - 1));
        long clipped = 0;
        DecodedFrame.RowReader rows = frame.rows();
        int[][] row = frame.rowMemory();
        for (int y = 0; y < frame.height(); y++) {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 0; x < frame.width(); x++) {
                clipped += Math.max(row[0][x], Math.max(row[1][x], row[2][x])) >= limit ? 1 : 0;
            }
        }
        return clipped / ((double) frame.width() * frame.height());
    }
}
