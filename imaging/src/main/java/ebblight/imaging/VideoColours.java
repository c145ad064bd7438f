package ebblight.imaging;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * What the samples of a clip stand for, by the stream's own marks: matrix, range and tone curve.
 *
 * @param matrix factors of red by Cr, green by Cb, green by Cr, blue by Cb (ITU-T H.273, 8.3)
 * @param fullRange whether black is 0 and white the largest code
 * @param rgb whether the samples are red, green and blue already
 */
record VideoColours(double[] matrix, boolean fullRange, boolean rgb, IccProfile profile) {

    /** Clips of this height and more that do not say count as BT.709, lower ones as BT.601 (common practice). */
    private static final int HIGH_DEFINITION = 720;

    static VideoColours of(AVFrame frame) {
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(frame.format());
        boolean rgb = (layout.flags() & avutil.AV_PIX_FMT_FLAG_RGB) != 0;
        boolean full = frame.color_range() == avutil.AVCOL_RANGE_JPEG || isJpegFormat(frame.format());
        return new VideoColours(matrix(frame), full, rgb, IccProfile.srgb().with(curve(frame.color_trc())));
    }

    /** What is to be said of marks that are not known here. */
    static List<String> warnings(AVCodecContext codec) {
        List<String> warnings = new ArrayList<>();
        switch (codec.color_trc()) {
            case avutil.AVCOL_TRC_BT709,
                    avutil.AVCOL_TRC_SMPTE170M,
                    avutil.AVCOL_TRC_IEC61966_2_1,
                    avutil.AVCOL_TRC_GAMMA22,
                    avutil.AVCOL_TRC_BT2020_10,
                    avutil.AVCOL_TRC_BT2020_12,
                    avutil.AVCOL_TRC_ARIB_STD_B67,
                    avutil.AVCOL_TRC_SMPTE2084,
                    avutil.AVCOL_TRC_LINEAR,
                    avutil.AVCOL_TRC_UNSPECIFIED -> {}
            default ->
                warnings.add("the clip's tone curve is not known here; it is read as sRGB, so contrasts may be off");
        }
        switch (codec.colorspace()) {
            case avutil.AVCOL_SPC_YCGCO, avutil.AVCOL_SPC_ICTCP, avutil.AVCOL_SPC_BT2020_CL ->
                warnings.add("the clip's colour coding is not known here; its colours will be off");
            default -> {}
        }
        if (codec.field_order() > avcodec.AV_FIELD_PROGRESSIVE) {
            warnings.add("the clip is interlaced: moving edges are combed; film with progressive frames");
        }
        return warnings;
    }

    /** Black in units of an 8-bit code. */
    double lumaBlack() {
        return fullRange ? 0 : 16;
    }

    /** Codes from black to white, in units of an 8-bit code. */
    double lumaSpan(int depth) {
        return fullRange ? largest(depth) : 219;
    }

    /** Codes from one end of chroma to the other, in units of an 8-bit code. */
    double chromaSpan(int depth) {
        return fullRange ? largest(depth) : 224;
    }

    private static double largest(int depth) {
        return ((1 << depth) - 1.0) / (1 << (depth - 8));
    }

    private static boolean isJpegFormat(int format) {
        return format == avutil.AV_PIX_FMT_YUVJ420P
                || format == avutil.AV_PIX_FMT_YUVJ422P
                || format == avutil.AV_PIX_FMT_YUVJ444P
                || format == avutil.AV_PIX_FMT_YUVJ440P;
    }

    /** ITU-T H.273, table 4: luma factors of red and blue. */
    private static double[] matrix(AVFrame frame) {
        return switch (frame.colorspace()) {
            case avutil.AVCOL_SPC_BT709 -> matrix(0.2126, 0.0722);
            case avutil.AVCOL_SPC_BT2020_NCL, avutil.AVCOL_SPC_BT2020_CL -> matrix(0.2627, 0.0593);
            case avutil.AVCOL_SPC_SMPTE170M, avutil.AVCOL_SPC_BT470BG -> matrix(0.299, 0.114);
            case avutil.AVCOL_SPC_FCC -> matrix(0.30, 0.11);
            case avutil.AVCOL_SPC_SMPTE240M -> matrix(0.212, 0.087);
            default -> frame.height() >= HIGH_DEFINITION ? matrix(0.2126, 0.0722) : matrix(0.299, 0.114);
        };
    }

    private static double[] matrix(double red, double blue) {
        double green = 1 - red - blue;
        return new double[] {2 * (1 - red), -2 * blue * (1 - blue) / green, -2 * red * (1 - red) / green, 2 * (1 - blue)
        };
    }

    private static TransferCurve curve(int mark) {
        return switch (mark) {
            case avutil.AVCOL_TRC_ARIB_STD_B67 -> TransferCurve.HLG;
            case avutil.AVCOL_TRC_SMPTE2084 -> TransferCurve.PQ;
            case avutil.AVCOL_TRC_LINEAR -> TransferCurve.LINEAR;
            default -> TransferCurve.SRGB;
        };
    }
}
