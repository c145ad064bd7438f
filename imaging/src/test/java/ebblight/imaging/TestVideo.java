package ebblight.imaging;

import org.bytedeco.ffmpeg.avutil.AVComponentDescriptor;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/** Decoded video frames with samples given by a formula, in any layout that FFmpeg knows. */
final class TestVideo {

    private TestVideo() {}

    /** The sample of a component at a place of the component's own grid, 0 to 1 of its whole range. */
    interface Formula {
        double at(int component, int x, int y);
    }

    static AVFrame frame(int format, int width, int height, int matrix, int range, Formula formula) {
        AVFrame frame = avutil.av_frame_alloc();
        frame.format(format).width(width).height(height);
        frame.colorspace(matrix).color_range(range);
        avutil.av_frame_get_buffer(frame, 0);
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(format);
        for (int k = 0; k < Math.min(3, layout.nb_components()); k++) {
            AVComponentDescriptor c = layout.comp(k);
            for (int y = 0; y < rows(layout, k, height); y++) {
                for (int x = 0; x < columns(layout, k, width); x++) {
                    int code = (int) Math.round(formula.at(k, x, y) * ((1 << c.depth()) - 1));
                    BytePointer row = frame.data(c.plane()).getPointer((long) y * frame.linesize(c.plane()));
                    long at = (long) x * c.step() + c.offset();
                    if (c.depth() == 8) {
                        row.put(at, (byte) code);
                    } else {
                        int shifted = code << c.shift();
                        row.put(at, (byte) shifted);
                        row.put(at + 1, (byte) (shifted >> 8));
                    }
                }
            }
        }
        return frame;
    }

    private static boolean chroma(AVPixFmtDescriptor layout, int k) {
        return k > 0 && (layout.flags() & avutil.AV_PIX_FMT_FLAG_RGB) == 0;
    }

    static int columns(AVPixFmtDescriptor layout, int k, int width) {
        return chroma(layout, k) ? width >> layout.log2_chroma_w() : width;
    }

    static int rows(AVPixFmtDescriptor layout, int k, int height) {
        return chroma(layout, k) ? height >> layout.log2_chroma_h() : height;
    }
}
