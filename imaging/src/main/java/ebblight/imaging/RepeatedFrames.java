package ebblight.imaging;

import java.nio.ByteBuffer;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;

/** Finds frames that repeat the one before byte for byte: cameras and players pad slow clips with them. */
final class RepeatedFrames implements AutoCloseable {

    private final AVFrame previous = avutil.av_frame_alloc();

    /** Whether the first plane, luma in all common clips, is the same as that of the frame before. */
    boolean isRepeat(AVFrame frame) {
        boolean same = previous.data(0) != null
                && previous.width() == frame.width()
                && previous.height() == frame.height()
                && previous.format() == frame.format()
                && samePlane(previous, frame);
        avutil.av_frame_unref(previous);
        avutil.av_frame_ref(previous, frame);
        return same;
    }

    private static boolean samePlane(AVFrame a, AVFrame b) {
        int length = avutil.av_image_get_linesize(b.format(), b.width(), 0);
        for (int y = 0; y < b.height(); y++) {
            if (row(a, y, length).mismatch(row(b, y, length)) >= 0) {
                return false;
            }
        }
        return true;
    }

    private static ByteBuffer row(AVFrame frame, int y, int length) {
        return frame.data(0)
                .getPointer((long) y * frame.linesize(0))
                .capacity(length)
                .asByteBuffer();
    }

    @Override
    public void close() {
        avutil.av_frame_free(previous);
    }
}
