package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.util.Optional;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_video;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;

/**
 * Lays frames over a first one when the tripod moved: shift and rotation by the enhanced correlation coefficient
 * (Evangelidis and Psarakis 2008) on reduced copies, coarse to fine, of the parts that stand still.
 */
final class FrameAlignment implements AutoCloseable {

    private static final int[] WIDTHS = {300, 1200};
    private static final int MOST_STEPS = 100;
    private static final double SETTLED = 1e-5;
    private static final double LEAST_CORRELATION = 0.7;
    /** Largest shift, as a share of the width. */
    private static final double FARTHEST = 0.1;

    private static final int SMOOTHED_PIXELS = 5;

    private final Mat[] reference = new Mat[WIDTHS.length];
    private final Mat[] still = new Mat[WIDTHS.length];

    FrameAlignment(DecodedFrame first, AlignOn parts) {
        for (int k = 0; k < WIDTHS.length; k++) {
            reference[k] = grey(first, WIDTHS[k]);
            still[k] = parts.isEverything() ? new Mat() : mask(parts, reference[k].cols(), reference[k].rows());
        }
    }

    /** The frame laid over the first one; empty when they do not fit. */
    Optional<DecodedFrame> align(DecodedFrame frame) {
        double[] m = {1, 0, 0, 0, 1, 0};
        for (int k = 0; k < WIDTHS.length; k++) {
            try (Mat grey = grey(frame, WIDTHS[k]);
                    Mat warp = new Mat(2, 3, opencv_core.CV_32F);
                    TermCriteria until = new TermCriteria(TermCriteria.COUNT + TermCriteria.EPS, MOST_STEPS, SETTLED);
                    Mat everywhere = new Mat()) {
                double scale = (double) grey.cols() / frame.width();
                // Moves count from the middle of the first pixel, which lies elsewhere once pixels are larger.
                double first = (1 / scale - 1) / 2;
                FloatIndexer at = warp.createIndexer();
                double[] reduced = scaled(m, scale, first);
                for (int i = 0; i < 6; i++) {
                    at.put(i / 3, i % 3, (float) reduced[i]);
                }
                double fit = opencv_video.findTransformECCWithMask(
                        reference[k],
                        grey,
                        still[k],
                        everywhere,
                        warp,
                        opencv_video.MOTION_EUCLIDEAN,
                        until,
                        SMOOTHED_PIXELS);
                if (!(fit > LEAST_CORRELATION)) {
                    return Optional.empty();
                }
                for (int i = 0; i < 6; i++) {
                    reduced[i] = at.get(i / 3, i % 3);
                }
                m = scaled(reduced, 1 / scale, -first * scale);
            } catch (RuntimeException e) {
                return Optional.empty(); // the correlation did not converge
            }
        }
        boolean far = Math.hypot(m[2], m[5]) > FARTHEST * frame.width();
        return far ? Optional.empty() : Optional.of(new ShiftedFrame(frame, new RigidMove(m[0], m[3], m[2], m[5])));
    }

    /**
     * A move counted in other pixels.
     *
     * @param scale size of an old pixel in new ones
     * @param first where the new first pixel lies, in old ones
     */
    private static double[] scaled(double[] m, double scale, double first) {
        double[] out = m.clone();
        out[2] = scale * (m[2] + (m[0] - 1 + m[1]) * first);
        out[5] = scale * (m[5] + (m[3] + m[4] - 1) * first);
        return out;
    }

    private static Mat grey(DecodedFrame frame, int width) {
        int w = frame.width();
        int h = frame.height();
        float[] values = new float[w * h];
        float scale = 1f / ((1 << frame.bits()) - 1);
        DecodedFrame.RowReader rows = frame.rows();
        int[][] row = frame.rowMemory();
        for (int y = 0; y < h; y++) {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 0; x < w; x++) {
                values[y * w + x] = row[1][x] * scale;
            }
        }
        int nw = Math.min(width, w);
        try (Mat full = new Mat(h, w, opencv_core.CV_32F);
                Size size = new Size(nw, Math.max(1, Math.round((float) h * nw / w)))) {
            FloatIndexer at = full.createIndexer();
            at.put(0, 0, values);
            Mat small = new Mat();
            resize(full, small, size, 0, 0, INTER_AREA);
            return small;
        }
    }

    /** 255 where the map says that the picture stands still, 0 elsewhere. */
    private static Mat mask(AlignOn parts, int width, int height) {
        try (Mat share = new Mat(parts.height(), parts.width(), opencv_core.CV_32F);
                Mat large = new Mat();
                Size size = new Size(width, height)) {
            FloatIndexer in = share.createIndexer();
            in.put(0, 0, parts.share());
            resize(share, large, size, 0, 0, INTER_LINEAR);
            FloatIndexer from = large.createIndexer();
            Mat mask = new Mat(height, width, opencv_core.CV_8U);
            UByteIndexer to = mask.createIndexer();
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    to.put(y, x, from.get(y, x) > 0.5f ? 255 : 0);
                }
            }
            return mask;
        }
    }

    @Override
    public void close() {
        for (int k = 0; k < WIDTHS.length; k++) {
            reference[k].close();
            still[k].close();
        }
    }
}
