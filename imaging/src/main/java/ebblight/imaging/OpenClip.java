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
import java.util.Optional;
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

/** A clip opened by FFmpeg: its video stream, decoder and conversion to code values of red, green, blue. */
final class OpenClip implements AutoCloseable {

    static {
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    }

    private final AVFormatContext format;
    private final AVCodecContext codec;
    private final int stream;
    private final double tick;
    private final double nominalSpacing;
    private final int quarterTurns;
    private final PixelConversion conversion;

    private OpenClip(
            AVFormatContext format,
            AVCodecContext codec,
            int stream,
            double tick,
            double nominalSpacing,
            int quarterTurns) {
        this.format = format;
        this.codec = codec;
        this.stream = stream;
        this.tick = tick;
        this.nominalSpacing = nominalSpacing;
        this.quarterTurns = quarterTurns;
        this.conversion = new PixelConversion();
    }

    static OpenClip of(Path file) throws IOException {
        AVFormatContext format = new AVFormatContext(null);
        if (avformat_open_input(format, file.toString(), null, null) < 0) {
            throw new UnreadableInputException(file, "is neither a clip nor a picture that can be read");
        }
        AVCodecContext codec = null;
        try {
            if (avformat_find_stream_info(format, (AVDictionary) null) < 0) {
                throw new UnreadableInputException(file, "is a clip whose contents cannot be made out");
            }
            int stream = av_find_best_stream(format, avutil.AVMEDIA_TYPE_VIDEO, -1, -1, (AVCodec) null, 0);
            if (stream < 0) {
                throw new UnreadableInputException(file, "holds no pictures");
            }
            AVStream video = format.streams(stream);
            AVCodec decoder = avcodec_find_decoder(video.codecpar().codec_id());
            if (decoder == null) {
                throw new UnreadableInputException(file, "is coded in a way that cannot be decoded here");
            }
            codec = avcodec_alloc_context3(decoder);
            avcodec_parameters_to_context(codec, video.codecpar());
            codec.thread_count(0);
            if (avcodec_open2(codec, decoder, (AVDictionary) null) < 0) {
                throw new UnreadableInputException(file, "has a decoder that does not start");
            }
            AVRational base = video.time_base();
            AVRational rate = video.avg_frame_rate();
            double spacing = rate.num() > 0 ? (double) rate.den() / rate.num() : 1.0 / 25;
            OpenClip clip =
                    new OpenClip(format, codec, stream, (double) base.num() / base.den(), spacing, turns(video));
            codec = null;
            return clip;
        } finally {
            if (codec != null) {
                avcodec.avcodec_free_context(codec);
                avformat.avformat_close_input(format);
            }
        }
    }

    /** Quarter turns clockwise that put the picture upright (display matrix in the stream's side data). */
    private static int turns(AVStream video) {
        for (int k = 0; k < video.codecpar().nb_coded_side_data(); k++) {
            AVPacketSideData data = video.codecpar().coded_side_data().getPointer(k);
            if (data.type() == avcodec.AV_PKT_DATA_DISPLAYMATRIX) {
                IntPointer matrix = new IntPointer(data.data());
                double degrees = -avutil.av_display_rotation_get(matrix);
                return Math.floorMod((int) Math.round(degrees / 90), 4);
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
        return stream;
    }

    /** Seconds of one unit of a time stamp. */
    double tick() {
        return tick;
    }

    /** Seconds from frame to frame by the header. */
    double nominalSpacing() {
        return nominalSpacing;
    }

    /** What is to be said of the clip's tone curve. */
    Optional<String> warning() {
        return PixelConversion.warning(codec);
    }

    DecodedFrame converted(AVFrame frame) throws IOException {
        return conversion.convert(frame, codec, quarterTurns);
    }

    /** Number of packets of the video stream. */
    int countPackets() {
        AVPacket packet = avcodec.av_packet_alloc();
        int count = 0;
        while (avformat.av_read_frame(format, packet) >= 0) {
            count += packet.stream_index() == stream ? 1 : 0;
            avcodec.av_packet_unref(packet);
        }
        avcodec.av_packet_free(packet);
        return count;
    }

    @Override
    public void close() {
        conversion.close();
        avcodec.avcodec_free_context(codec);
        avformat.avformat_close_input(format);
    }
}
