package ebblight.imaging;

import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCachedContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;

import java.io.IOException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.ffmpeg.swscale.SwsFilter;
import org.bytedeco.javacpp.DoublePointer;
import org.jspecify.annotations.Nullable;

/**
 * Turns the layouts that {@link VideoPlane} does not read into one that it does: video with rare chroma into bytes of
 * luma and full chroma, everything else (palettes, packed bits, …) into bytes of red, green, blue.
 */
final class VideoFallback implements AutoCloseable {

    private @Nullable SwsContext context;

    /** Converts {@code source} into {@code target}, whose memory this provides. */
    void convert(AVFrame source, AVFrame target) throws IOException {
        int w = source.width();
        int h = source.height();
        int layout = isVideo(source.format()) ? avutil.AV_PIX_FMT_YUV444P : avutil.AV_PIX_FMT_RGB24;
        context = sws_getCachedContext(
                context,
                w,
                h,
                source.format(),
                w,
                h,
                layout,
                swscale.SWS_BILINEAR | swscale.SWS_ACCURATE_RND | swscale.SWS_FULL_CHR_H_INT,
                (SwsFilter) null,
                (SwsFilter) null,
                (DoublePointer) null);
        SwsContext scaler = context;
        target.format(layout).width(w).height(h);
        if (scaler == null || avutil.av_frame_get_buffer(target, 0) < 0) {
            throw new IOException("the clip's pixels come in a layout that cannot be converted");
        }
        sws_scale(scaler, source.data(), source.linesize(), 0, h, target.data(), target.linesize());
        avutil.av_frame_copy_props(target, source);
    }

    private static boolean isVideo(int format) {
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(format);
        long others = avutil.AV_PIX_FMT_FLAG_RGB
                | avutil.AV_PIX_FMT_FLAG_PAL
                | avutil.AV_PIX_FMT_FLAG_BAYER
                | avutil.AV_PIX_FMT_FLAG_XYZ;
        return layout.nb_components() >= 3 && (layout.flags() & others) == 0;
    }

    @Override
    public void close() {
        if (context != null) {
            sws_freeContext(context);
            context = null;
        }
    }
}
