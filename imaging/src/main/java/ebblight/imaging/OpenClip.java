package ebblight.imaging;

import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avformat.av_find_best_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;

import java.io.IOException;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.IntPointer;

/** A clip opened by FFmpeg: its file, its video stream and the decoder of it. */
final class OpenClip implements AutoCloseable {

    /** Containers of clips. Others are left out: some name further files or addresses, some take text for pictures. */
    private static final String CONTAINERS =
            "mov,mp4,3gp,matroska,webm,avi,mpegts,mpeg,mpegvideo,asf,flv,ogg,mxf,dv,h264,hevc,m4v,mjpeg,yuv4mpegpipe,nut";

    private static final String CUT = " (a clip that was cut off while copying has lost its index: copy it again)";

    /** Where a header says nothing of the rate. */
    private static final double COMMON_SPACING = 1.0 / 25;

    static {
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    }

    private final AVFormatContext format;
    private final AVCodecContext codec;
    private final AVStream video;
    private final int quarterTurns;

    private OpenClip(AVFormatContext format, AVCodecContext codec, AVStream video) {
        this.format = format;
        this.codec = codec;
        this.video = video;
        this.quarterTurns = turns(video);
    }

    static OpenClip of(Path file) throws IOException {
        AVFormatContext format = open(file);
        AVCodecContext codec = null;
        try {
            if (avformat_find_stream_info(format, (AVDictionary) null) < 0) {
                throw new UnreadableInputException(file, "is a clip whose contents cannot be made out");
            }
            int stream = av_find_best_stream(format, avutil.AVMEDIA_TYPE_VIDEO, -1, -1, (AVCodec) null, 0);
            if (stream < 0) {
                throw new UnreadableInputException(file, "holds no pictures" + CUT);
            }
            AVStream video = format.streams(stream);
            AVCodec decoder = avcodec_find_decoder(video.codecpar().codec_id());
            if (decoder == null) {
                throw new UnreadableInputException(
                        file, "is coded in a way that cannot be decoded here; convert it to H.264 or H.265 first");
            }
            codec = avcodec_alloc_context3(decoder);
            avcodec_parameters_to_context(codec, video.codecpar());
            codec.thread_count(0);
            if (avcodec_open2(codec, decoder, (AVDictionary) null) < 0) {
                throw new UnreadableInputException(file, "has a decoder that does not start");
            }
            OpenClip clip = new OpenClip(format, codec, video);
            codec = null;
            format = null;
            return clip;
        } finally {
            if (codec != null) {
                avcodec.avcodec_free_context(codec);
            }
            if (format != null) {
                avformat.avformat_close_input(format);
            }
        }
    }

    private static AVFormatContext open(Path file) throws UnreadableInputException {
        AVFormatContext format = new AVFormatContext(null);
        AVDictionary options = new AVDictionary(null);
        avutil.av_dict_set(options, "format_whitelist", CONTAINERS, 0);
        try {
            if (avformat_open_input(format, "file:" + file.toAbsolutePath(), null, options) < 0) {
                throw new UnreadableInputException(file, "is neither a picture nor a whole clip" + CUT);
            }
        } finally {
            avutil.av_dict_free(options);
        }
        return format;
    }

    /** Quarter turns clockwise that put the picture upright (display matrix in the stream's side data). */
    private static int turns(AVStream video) {
        for (int k = 0; k < video.codecpar().nb_coded_side_data(); k++) {
            AVPacketSideData data = video.codecpar().coded_side_data().getPointer(k);
            if (data.type() == avcodec.AV_PKT_DATA_DISPLAYMATRIX) {
                double degrees = -avutil.av_display_rotation_get(new IntPointer(data.data()));
                return Double.isNaN(degrees) ? 0 : Math.floorMod((int) Math.round(degrees / 90), 4);
            }
        }
        return 0;
    }

    AVFormatContext format() {
        return format;
    }

    AVCodecContext codec() {
        return codec;
    }

    int stream() {
        return video.index();
    }

    /** Quarter turns clockwise that put the frames upright. */
    int quarterTurns() {
        return quarterTurns;
    }

    /** Width of an upright frame. */
    int width() {
        return quarterTurns % 2 == 0
                ? video.codecpar().width()
                : video.codecpar().height();
    }

    /** Height of an upright frame. */
    int height() {
        return quarterTurns % 2 == 0
                ? video.codecpar().height()
                : video.codecpar().width();
    }

    /** Whether a decoded frame has the size that the header tells. */
    boolean fits(AVFrame frame) {
        return frame.width() == video.codecpar().width()
                && frame.height() == video.codecpar().height();
    }

    /** Seconds of one unit of a time stamp. */
    double tickSeconds() {
        AVRational base = video.time_base();
        return (double) base.num() / base.den();
    }

    /** Time stamp of the beginning. */
    long startStamp() {
        return video.start_time() == avutil.AV_NOPTS_VALUE ? 0 : video.start_time();
    }

    /** Seconds from frame to frame by the header. */
    double nominalSpacingSeconds() {
        AVRational rate = video.avg_frame_rate();
        return rate.num() > 0 && rate.den() > 0 ? (double) rate.den() / rate.num() : COMMON_SPACING;
    }

    /** Seconds that the header says the clip lasts; 0 when it does not say. */
    double nominalSeconds() {
        if (video.duration() != avutil.AV_NOPTS_VALUE) {
            return Math.max(0, video.duration() * tickSeconds());
        }
        return format.duration() == avutil.AV_NOPTS_VALUE
                ? 0
                : Math.max(0, format.duration() / (double) avutil.AV_TIME_BASE);
    }

    /** Number of packets of the video stream that are there: about the number of frames. */
    int countPackets() {
        AVPacket packet = avcodec.av_packet_alloc();
        int count = 0;
        while (avformat.av_read_frame(format, packet) >= 0) {
            count += packet.stream_index() == stream() ? 1 : 0;
            avcodec.av_packet_unref(packet);
        }
        avcodec.av_packet_free(packet);
        return count;
    }

    @Override
    public void close() {
        avcodec.avcodec_free_context(codec);
        avformat.avformat_close_input(format);
    }
}
