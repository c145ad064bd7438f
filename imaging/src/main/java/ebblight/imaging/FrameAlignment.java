package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_CUBIC;
import static org.bytedeco.opencv.global.opencv_imgproc.WARP_INVERSE_MAP;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;
import static org.bytedeco.opencv.global.opencv_imgproc.warpAffine;

import java.nio.ShortBuffer;
import java.util.Optional;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.ShortPointer;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_video;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;

/**
 * Lays frames over a first one when the tripod moved: shift and rotation by the enhanced correlation coefficient
 * (Evangelidis and Psarakis 2008) on reduced copies, coarse to fine.
 */
final class FrameAlignment implements AutoCloseable {

    private static final int[] WIDTHS = {300, 1200};
    private static final int MOST_STEPS = 100;
    private static final double SETTLED = 1e-5;
    private static final double LEAST_CORRELATION = 0.7;
    private static final double FARTHEST = 0.1;

    private final Mat[] reference;

    FrameAlignment(DecodedFrame first) {
        reference = new Mat[WIDTHS.length];
        for (int k = 0; k < WIDTHS.length; k++) {
            reference[k] = grey(first, WIDTHS[k]);
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
                FloatIndexer at = warp.createIndexer();
                for (int i = 0; i < 6; i++) {
                    at.put(i / 3, i % 3, (float) (i % 3 == 2 ? m[i] * scale : m[i]));
                }
                double fit = opencv_video.findTransformECC(
                        reference[k], grey, warp, opencv_video.MOTION_EUCLIDEAN, until, everywhere, 5);
                if (!(fit > LEAST_CORRELATION)) {
                    return Optional.empty();
                }
                for (int i = 0; i < 6; i++) {
                    m[i] = i % 3 == 2 ? at.get(i / 3, i % 3) / scale : at.get(i / 3, i % 3);
                }
            } catch (RuntimeException e) {
                return Optional.empty(); // the correlation did not converge
            }
        }
        boolean far = Math.abs(m[2]) > FARTHEST * frame.width() || Math.abs(m[5]) > FARTHEST * frame.width();
        return far ? Optional.empty() : Optional.of(warped(frame, m));
    }

    private static Mat grey(DecodedFrame frame, int width) {
        int w = frame.width();
        int h = frame.height();
        float[] values = new float[w * h];
        float scale = frame.bits() == 8 ? 1f / 255 : 1f / 65535;
        for (int p = 0; p < values.length; p++) {
            values[p] = frame.code(3 * p + 1) * scale;
        }
        try (Mat full = new Mat(h, w, opencv_core.CV_32F)) {
            FloatIndexer at = full.createIndexer();
            at.put(0, 0, values);
            Mat small = new Mat();
            int nw = Math.min(width, w);
            try (Size size = new Size(nw, Math.max(1, Math.round((float) h * nw / w)))) {
                resize(full, small, size, 0, 0, INTER_AREA);
            }
            return small;
        }
    }

    private static DecodedFrame warped(DecodedFrame frame, double[] m) {
        int w = frame.width();
        int h = frame.height();
        int type = frame.bits() == 8 ? opencv_core.CV_8UC3 : opencv_core.CV_16UC3;
        try (Mat warp = new Mat(2, 3, opencv_core.CV_32F);
                Mat out = new Mat();
                Size size = new Size(w, h);
                Scalar black = new Scalar(0)) {
            FloatIndexer at = warp.createIndexer();
            for (int i = 0; i < 6; i++) {
                at.put(i / 3, i % 3, (float) m[i]);
            }
            if (frame.bits() == 8) {
                try (BytePointer data = new BytePointer(frame.codes8());
                        Mat in = new Mat(h, w, type, data)) {
                    warpAffine(
                            in, out, warp, size, INTER_CUBIC | WARP_INVERSE_MAP, opencv_core.BORDER_REPLICATE, black);
                    byte[] codes = new byte[frame.samples()];
                    out.data().get(codes);
                    return DecodedFrame.of8(w, h, codes, frame.profile());
                }
            }
            try (ShortPointer data = new ShortPointer(frame.codes16());
                    Mat in = new Mat(h, w, type, data)) {
                warpAffine(in, out, warp, size, INTER_CUBIC | WARP_INVERSE_MAP, opencv_core.BORDER_REPLICATE, black);
                short[] codes = new short[frame.samples()];
                ShortBuffer buffer = out.createBuffer();
                buffer.get(codes);
                return DecodedFrame.of16(w, h, codes, frame.profile());
            }
        }
    }

    @Override
    public void close() {
        for (Mat mat : reference) {
            mat.close();
        }
    }
}
