package ebblight.imaging;

import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCachedContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import java.io.IOException;
import java.util.Optional;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.ffmpeg.swscale.SwsFilter;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * Turns decoded video frames into code values of red, green, blue by the stream's own matrix and range, upright. What
 * the codes stand for is told by the profile: the sRGB curve for ordinary video, the inverse of HLG or PQ where the
 * stream says so.
 */
final class PixelConversion implements AutoCloseable {

    private @Nullable SwsContext context;
    private @Nullable BytePointer buffer;

    /** What is to be said of a tone curve that had to be guessed. */
    static Optional<String> warning(AVCodecContext codec) {
        return switch (codec.color_trc()) {
            case avutil.AVCOL_TRC_BT709,
                    avutil.AVCOL_TRC_SMPTE170M,
                    avutil.AVCOL_TRC_IEC61966_2_1,
                    avutil.AVCOL_TRC_GAMMA22,
                    avutil.AVCOL_TRC_BT2020_10,
                    avutil.AVCOL_TRC_BT2020_12,
                    avutil.AVCOL_TRC_ARIB_STD_B67,
                    avutil.AVCOL_TRC_SMPTE2084,
                    avutil.AVCOL_TRC_LINEAR,
                    avutil.AVCOL_TRC_UNSPECIFIED -> Optional.empty();
            default ->
                Optional.of("the clip's tone curve is not known here; it is read as sRGB, so contrasts may be off");
        };
    }

    private static IccProfile profile(int transfer) {
        return switch (transfer) {
            case avutil.AVCOL_TRC_ARIB_STD_B67 -> IccProfile.srgb().with(TransferCurve.HLG);
            case avutil.AVCOL_TRC_SMPTE2084 -> IccProfile.srgb().with(TransferCurve.PQ);
            case avutil.AVCOL_TRC_LINEAR -> IccProfile.srgb().with(TransferCurve.LINEAR);
            default -> IccProfile.srgb();
        };
    }

    DecodedFrame convert(AVFrame frame, AVCodecContext codec, int quarterTurns) throws IOException {
        int width = frame.width();
        int height = frame.height();
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(frame.format());
        boolean deep = layout.comp(0).depth() > 8;
        int target = deep ? avutil.AV_PIX_FMT_RGB48LE : avutil.AV_PIX_FMT_RGB24;
        int bytes = 3 * width * height * (deep ? 2 : 1);
        SwsContext scaler = sws_getCachedContext(
                context,
                width,
                height,
                frame.format(),
                width,
                height,
                target,
                swscale.SWS_BICUBIC | swscale.SWS_ACCURATE_RND | swscale.SWS_FULL_CHR_H_INT,
                (SwsFilter) null,
                (SwsFilter) null,
                (DoublePointer) null);
        if (scaler == null) {
            throw new IOException("the clip's pixel format cannot be converted");
        }
        context = scaler;
        setColours(scaler, frame, codec, height);
        BytePointer out = buffer;
        if (out == null || out.capacity() < bytes) {
            out = new BytePointer(bytes);
            buffer = out;
        }
        try (PointerPointer<Pointer> planes = new PointerPointer<>(1);
                IntPointer strides = new IntPointer(1)) {
            planes.put(0, out);
            strides.put(0, bytes / height);
            sws_scale(scaler, frame.data(), frame.linesize(), 0, height, planes, strides);
        }
        byte[] codes = new byte[bytes];
        out.position(0);
        out.get(codes);
        IccProfile profile = profile(codec.color_trc());
        return upright(codes, width, height, deep, quarterTurns, profile);
    }

    private static void setColours(SwsContext scaler, AVFrame frame, AVCodecContext codec, int height) {
        int space = frame.colorspace();
        int matrix =
                switch (space) {
                    case avutil.AVCOL_SPC_BT709 -> swscale.SWS_CS_ITU709;
                    case avutil.AVCOL_SPC_BT2020_NCL, avutil.AVCOL_SPC_BT2020_CL -> swscale.SWS_CS_BT2020;
                    case avutil.AVCOL_SPC_SMPTE170M, avutil.AVCOL_SPC_BT470BG -> swscale.SWS_CS_ITU601;
                    case avutil.AVCOL_SPC_FCC -> swscale.SWS_CS_FCC;
                    case avutil.AVCOL_SPC_SMPTE240M -> swscale.SWS_CS_SMPTE240M;
                    // Unmarked video: common practice is BT.601 for standard and BT.709 for high definition.
                    default -> height >= 720 ? swscale.SWS_CS_ITU709 : swscale.SWS_CS_ITU601;
                };
        boolean full = frame.color_range() == avutil.AVCOL_RANGE_JPEG
                || codec.pix_fmt() == avutil.AV_PIX_FMT_YUVJ420P
                || codec.pix_fmt() == avutil.AV_PIX_FMT_YUVJ422P
                || codec.pix_fmt() == avutil.AV_PIX_FMT_YUVJ444P;
        IntPointer from = sws_getCoefficients(matrix);
        IntPointer to = sws_getCoefficients(swscale.SWS_CS_DEFAULT);
        sws_setColorspaceDetails(scaler, from, full ? 1 : 0, to, 1, 0, 1 << 16, 1 << 16);
    }

    private static DecodedFrame upright(
            byte[] codes, int width, int height, boolean deep, int turns, IccProfile profile) {
        int w = turns % 2 == 0 ? width : height;
        int h = turns % 2 == 0 ? height : width;
        if (!deep) {
            return DecodedFrame.of8(w, h, turns == 0 ? codes : turned(codes, width, height, turns, 3), profile);
        }
        byte[] right = turns == 0 ? codes : turned(codes, width, height, turns, 6);
        short[] wide = new short[right.length / 2];
        for (int i = 0; i < wide.length; i++) {
            wide[i] = (short) ((right[2 * i] & 0xFF) | (right[2 * i + 1] & 0xFF) << 8);
        }
        return DecodedFrame.of16(w, h, wide, profile);
    }

    /** The picture turned clockwise by quarter turns; {@code step} bytes a pixel. */
    private static byte[] turned(byte[] codes, int width, int height, int turns, int step) {
        byte[] out = new byte[codes.length];
        int w = turns % 2 == 0 ? width : height;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int nx = turns == 1 ? height - 1 - y : turns == 2 ? width - 1 - x : y;
                int ny = turns == 1 ? x : turns == 2 ? height - 1 - y : width - 1 - x;
                System.arraycopy(codes, (y * width + x) * step, out, (ny * w + nx) * step, step);
            }
        }
        return out;
    }

    @Override
    public void close() {
        if (context != null) {
            sws_freeContext(context);
            context = null;
        }
    }
}
