package ebblight.imaging;

import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVOutputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * Writes a clip: H.264 in an .mp4 file whose index stands in front, BT.709 in limited range and marked so, every frame
 * coded equally finely so that its noise stays.
 */
public final class ClipWriter implements AutoCloseable {

    /** Quantiser of every frame, 0 to 51: about one code of error in the brightest part of the picture. */
    private static final int QUANTISER = 14;

    private static final int KEY_FRAME_SPACING = 30;
    private static final int LARGEST_DENOMINATOR = 100_000;

    static {
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    }

    private final Path target;
    private final OutputFile output;
    private final AVFormatContext format;
    private final AVCodecContext codec;
    private final AVStream stream;
    private final AVFrame frame = avutil.av_frame_alloc();
    private final AVPacket packet = avcodec.av_packet_alloc();
    private final VideoEncoding encoding;
    private long written;

    private ClipWriter(Path target, OutputFile output, AVFormatContext format, AVCodecContext codec, AVStream stream) {
        this.target = target;
        this.output = output;
        this.format = format;
        this.codec = codec;
        this.stream = stream;
        this.encoding = new VideoEncoding(codec.width(), codec.height());
        frame.format(codec.pix_fmt()).width(codec.width()).height(codec.height());
        avutil.av_frame_get_buffer(frame, 0);
    }

    /**
     * Begins a clip at {@code target}.
     *
     * @param width pixels across, even
     * @param height pixels down, even
     */
    public static ClipWriter begin(Path target, int width, int height, double framesPerSecond) throws IOException {
        if (width < 16 || height < 16 || width % 2 != 0 || height % 2 != 0) {
            throw new IllegalArgumentException(
                    "a clip's width and height must be even and at least 16, were " + width + " × " + height);
        }
        if (!(framesPerSecond > 0 && framesPerSecond <= 1000)) {
            throw new IllegalArgumentException(
                    "frames per second must be above 0, up to 1000, were " + framesPerSecond);
        }
        OutputFile output = OutputFile.begin(target);
        AVFormatContext format = new AVFormatContext(null);
        AVCodecContext codec = null;
        boolean begun = false;
        try {
            avformat_alloc_output_context2(
                    format, (AVOutputFormat) null, "mp4", output.part().toString());
            codec = coder(target, width, height, framesPerSecond);
            AVStream stream = avformat_new_stream(format, null);
            stream.time_base(codec.time_base());
            stream.avg_frame_rate(codec.framerate());
            avcodec.avcodec_parameters_from_context(stream.codecpar(), codec);
            AVIOContext file = new AVIOContext(null);
            if (avio_open(file, output.part().toString(), avformat.AVIO_FLAG_WRITE) < 0) {
                throw new IOException(target + ": cannot be written; choose another folder");
            }
            format.pb(file);
            AVDictionary options = new AVDictionary(null);
            avutil.av_dict_set(options, "movflags", "+faststart", 0);
            int headed = avformat_write_header(format, options);
            avutil.av_dict_free(options);
            check(headed, target);
            begun = true;
            return new ClipWriter(target, output, format, codec, stream);
        } finally {
            if (!begun) {
                if (codec != null) {
                    avcodec.avcodec_free_context(codec);
                }
                free(format);
                output.close();
            }
        }
    }

    private static AVCodecContext coder(Path target, int width, int height, double framesPerSecond) throws IOException {
        AVCodec coder = avcodec.avcodec_find_encoder_by_name("libopenh264");
        if (coder == null) {
            throw new IOException(target + ": no H.264 encoder on this platform; write single frames instead");
        }
        AVCodecContext codec = avcodec.avcodec_alloc_context3(coder);
        AVRational rate = avutil.av_d2q(framesPerSecond, LARGEST_DENOMINATOR);
        codec.width(width).height(height);
        codec.pix_fmt(avutil.AV_PIX_FMT_YUV420P);
        codec.framerate(rate);
        codec.time_base(avutil.av_inv_q(rate));
        codec.gop_size(KEY_FRAME_SPACING);
        codec.qmin(QUANTISER).qmax(QUANTISER);
        codec.color_range(avutil.AVCOL_RANGE_MPEG);
        codec.colorspace(avutil.AVCOL_SPC_BT709);
        codec.color_primaries(avutil.AVCOL_PRI_BT709);
        codec.color_trc(avutil.AVCOL_TRC_BT709);
        codec.flags(codec.flags() | avcodec.AV_CODEC_FLAG_GLOBAL_HEADER);
        AVDictionary options = new AVDictionary(null);
        avutil.av_dict_set(options, "rc_mode", "quality", 0);
        int opened = avcodec.avcodec_open2(codec, coder, options);
        avutil.av_dict_free(options);
        if (opened < 0) {
            avcodec.avcodec_free_context(codec);
            throw new IOException(target + ": the H.264 encoder does not take frames of " + width + " × " + height);
        }
        return codec;
    }

    /** Adds a frame: codes of red, green, blue in sRGB, pixel by pixel. */
    public void add(byte[] rgb) throws IOException {
        if (rgb.length != 3 * codec.width() * codec.height()) {
            throw new IllegalArgumentException(
                    "a frame of this clip has " + 3 * codec.width() * codec.height() + " codes, had " + rgb.length);
        }
        avutil.av_frame_make_writable(frame);
        encoding.write(rgb, frame);
        frame.pts(written++);
        check(avcodec_send_frame(codec, frame), target);
        drain();
    }

    private void drain() throws IOException {
        while (avcodec_receive_packet(codec, packet) >= 0) {
            packet.duration(1);
            packet.stream_index(stream.index());
            avcodec.av_packet_rescale_ts(packet, codec.time_base(), stream.time_base());
            check(av_interleaved_write_frame(format, packet), target);
        }
    }

    /** Finishes the clip and moves it into place. */
    public void commit() throws IOException {
        avcodec_send_frame(codec, null);
        drain();
        check(av_write_trailer(format), target);
        avformat.avio_closep(format.pb());
        format.pb(null);
        output.commit();
    }

    private static void check(int result, Path target) throws IOException {
        if (result < 0) {
            byte[] text = new byte[avutil.AV_ERROR_MAX_STRING_SIZE];
            avutil.av_strerror(result, text, text.length);
            String words = new String(text, StandardCharsets.UTF_8).replace("\0", "");
            throw new IOException(target + ": the clip could not be written: " + words);
        }
    }

    private static void free(AVFormatContext format) {
        if (!format.isNull()) {
            if (format.pb() != null) {
                avformat.avio_closep(format.pb());
            }
            avformat.avformat_free_context(format);
        }
    }

    @Override
    public void close() throws IOException {
        avutil.av_frame_free(frame);
        avcodec.av_packet_free(packet);
        avcodec.avcodec_free_context(codec);
        free(format);
        output.close();
    }
}
