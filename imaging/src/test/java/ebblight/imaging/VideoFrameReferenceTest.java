package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import java.nio.ByteBuffer;
import java.util.stream.Stream;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.ffmpeg.global.swscale;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.ffmpeg.swscale.SwsFilter;
import org.bytedeco.javacpp.DoublePointer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Our reading of decoded video against the formulas of ITU-R BT.601, BT.709 and BT.2020, and against swscale. */
class VideoFrameReferenceTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;

    /** A layout with its matrix: luma factors of red and blue as the Recommendations give them. */
    record Layout(String name, int format, int matrix, double red, double blue, boolean full) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Layout> layouts() {
        return Stream.of(
                new Layout("420 8 bits 709", avutil.AV_PIX_FMT_YUV420P, avutil.AVCOL_SPC_BT709, .2126, .0722, false),
                new Layout("420 8 bits 601", avutil.AV_PIX_FMT_YUV420P, avutil.AVCOL_SPC_SMPTE170M, .299, .114, false),
                new Layout("420 8 bits full", avutil.AV_PIX_FMT_YUVJ420P, avutil.AVCOL_SPC_SMPTE170M, .299, .114, true),
                new Layout("NV12", avutil.AV_PIX_FMT_NV12, avutil.AVCOL_SPC_BT709, .2126, .0722, false),
                new Layout(
                        "420 10 bits", avutil.AV_PIX_FMT_YUV420P10LE, avutil.AVCOL_SPC_BT2020_NCL, .2627, .0593, false),
                new Layout("P010", avutil.AV_PIX_FMT_P010LE, avutil.AVCOL_SPC_BT2020_NCL, .2627, .0593, false),
                new Layout("422 8 bits", avutil.AV_PIX_FMT_YUV422P, avutil.AVCOL_SPC_BT709, .2126, .0722, false),
                new Layout("422 packed", avutil.AV_PIX_FMT_YUYV422, avutil.AVCOL_SPC_BT709, .2126, .0722, false),
                new Layout("444 12 bits", avutil.AV_PIX_FMT_YUV444P12LE, avutil.AVCOL_SPC_BT709, .2126, .0722, true));
    }

    /** In deep frames of full range swscale takes white to be 255 steps of 8 bits (H.273: the largest code). */
    static Stream<Layout> layoutsThatSwscaleKnows() {
        return layouts().filter(layout -> !layout.name.equals("444 12 bits"));
    }

    private static AVFrame frame(Layout layout, TestVideo.Formula formula) {
        int range = layout.full ? avutil.AVCOL_RANGE_JPEG : avutil.AVCOL_RANGE_MPEG;
        return TestVideo.frame(layout.format, WIDTH, HEIGHT, layout.matrix, range, formula);
    }

    /** Noise of every code, so that each pixel stands alone. */
    private static TestVideo.Formula noise(AVPixFmtDescriptor layout) {
        int[] codes =
                TestPictures.random(3 * WIDTH * HEIGHT, (1 << layout.comp(0).depth()) - 1, 5);
        double largest = (1 << layout.comp(0).depth()) - 1;
        return (k, x, y) -> codes[(k * HEIGHT + y) * WIDTH + x] / largest;
    }

    @ParameterizedTest
    @MethodSource("layouts")
    void everyPixelIsThatOfTheFormula(Layout layout) {
        AVPixFmtDescriptor pixels = avutil.av_pix_fmt_desc_get(layout.format);
        TestVideo.Formula formula = noise(pixels);
        AVFrame frame = frame(layout, formula);
        assertThat(VideoPlane.reads(frame)).isTrue();
        PackedFrame read = PackedFrame.of(VideoFrame.of(frame, 0));
        double unit = 1 << (pixels.comp(0).depth() - 8);
        double largest = (1 << pixels.comp(0).depth()) - 1;
        double span = layout.full ? largest : 219 * unit;
        double chromaSpan = layout.full ? largest : 224 * unit;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double luma = (formula.at(0, x, y) * largest - (layout.full ? 0 : 16 * unit)) / span;
                double cb = (chroma(pixels, formula, 1, x, y) * largest - 128 * unit) / chromaSpan;
                double cr = (chroma(pixels, formula, 2, x, y) * largest - 128 * unit) / chromaSpan;
                double red = luma + 2 * (1 - layout.red) * cr;
                double blue = luma + 2 * (1 - layout.blue) * cb;
                double green = (luma - layout.red * red - layout.blue * blue) / (1 - layout.red - layout.blue);
                int at = 3 * (y * WIDTH + x);
                assertThat((double) read.code(at)).isCloseTo(code(red), within(0.6));
                assertThat((double) read.code(at + 1)).isCloseTo(code(green), within(0.6));
                assertThat((double) read.code(at + 2)).isCloseTo(code(blue), within(0.6));
            }
        }
        avutil.av_frame_free(frame);
    }

    private static double code(double value) {
        return 4095 * Math.max(0, Math.min(1, value));
    }

    /** Straight lines between chroma samples, which H.264 puts beside the left pixel and between the rows. */
    private static double chroma(AVPixFmtDescriptor layout, TestVideo.Formula formula, int k, int x, int y) {
        double u = layout.log2_chroma_w() == 1 ? x / 2.0 : x;
        double v = layout.log2_chroma_h() == 1 ? (y - 0.5) / 2 : y;
        int columns = TestVideo.columns(layout, k, WIDTH);
        int rows = TestVideo.rows(layout, k, HEIGHT);
        int left = (int) Math.floor(u);
        int top = (int) Math.floor(v);
        double sum = 0;
        for (int j = 0; j < 2; j++) {
            for (int i = 0; i < 2; i++) {
                double weight = (i == 0 ? 1 - (u - left) : u - left) * (j == 0 ? 1 - (v - top) : v - top);
                int column = Math.max(0, Math.min(columns - 1, left + i));
                int row = Math.max(0, Math.min(rows - 1, top + j));
                sum += weight * formula.at(k, column, row);
            }
        }
        return sum;
    }

    @Test
    void redGreenBlueStaysWhatItIs() {
        AVPixFmtDescriptor pixels = avutil.av_pix_fmt_desc_get(avutil.AV_PIX_FMT_GBRP10LE);
        TestVideo.Formula formula = noise(pixels);
        AVFrame frame = TestVideo.frame(
                avutil.AV_PIX_FMT_GBRP10LE, WIDTH, HEIGHT, avutil.AVCOL_SPC_RGB, avutil.AVCOL_RANGE_JPEG, formula);
        PackedFrame read = PackedFrame.of(VideoFrame.of(frame, 0));
        for (int i = 0; i < read.samples(); i++) {
            int p = i / 3;
            double expected = 4095 * formula.at(i % 3, p % WIDTH, p / WIDTH);
            assertThat((double) read.code(i)).isCloseTo(expected, within(0.6));
        }
        avutil.av_frame_free(frame);
    }

    @Test
    void turnedFramesAreTheSameTurned() {
        Layout layout = layouts().findFirst().orElseThrow();
        AVFrame frame = frame(layout, noise(avutil.av_pix_fmt_desc_get(layout.format)));
        PackedFrame upright = PackedFrame.of(VideoFrame.of(frame, 0));
        for (int turns = 1; turns < 4; turns++) {
            PackedFrame turned = PackedFrame.of(VideoFrame.of(frame, turns));
            assertThat(turned.width()).isEqualTo(turns == 2 ? WIDTH : HEIGHT);
            for (int p = 0; p < WIDTH * HEIGHT; p++) {
                int x = p % WIDTH;
                int y = p / WIDTH;
                int nx = turns == 1 ? HEIGHT - 1 - y : turns == 2 ? WIDTH - 1 - x : y;
                int ny = turns == 1 ? x : turns == 2 ? HEIGHT - 1 - y : WIDTH - 1 - x;
                for (int c = 0; c < 3; c++) {
                    int q = 3 * (ny * turned.width() + nx) + c;
                    assertThat(turned.code(q)).isEqualTo(upright.code(3 * p + c));
                }
            }
        }
        avutil.av_frame_free(frame);
    }

    /**
     * Slow slopes of colour, where it hardly matters where chroma lies between the pixels: swscale takes it to lie in
     * their middle whatever the stream says. It rounds to 8 bits, too.
     */
    @ParameterizedTest
    @MethodSource("layoutsThatSwscaleKnows")
    void reducedFramesAreThoseOfSwscaleToOneCode(Layout layout) {
        TestVideo.Formula slopes = (k, x, y) -> 0.5 + 0.3 * Math.sin((x + 90 * k) / 90.0 + y / 60.0);
        AVFrame frame = frame(layout, slopes);
        int w = WIDTH / 4;
        int h = HEIGHT / 4;
        AreaMean area = new AreaMean(WIDTH, HEIGHT, w, h);
        byte[] ours = area.linear16(VideoFrame.of(frame, 0));
        byte[] theirs = area.linear16(bySwscale(frame, layout));
        for (int i = 0; i < 3 * w * h; i++) {
            double mine = 255 * PlainStack.code(light(ours, i));
            double other = 255 * PlainStack.code(light(theirs, i));
            assertThat(mine).isCloseTo(other, within(1.0));
        }
        avutil.av_frame_free(frame);
    }

    private static double light(byte[] linear16, int i) {
        return ((linear16[2 * i] & 0xFF) | (linear16[2 * i + 1] & 0xFF) << 8) / 65535.0;
    }

    private static PackedFrame bySwscale(AVFrame frame, Layout layout) {
        SwsContext scaler = sws_getContext(
                WIDTH,
                HEIGHT,
                frame.format(),
                WIDTH,
                HEIGHT,
                avutil.AV_PIX_FMT_RGB24,
                swscale.SWS_BICUBIC | swscale.SWS_ACCURATE_RND | swscale.SWS_FULL_CHR_H_INT,
                (SwsFilter) null,
                (SwsFilter) null,
                (DoublePointer) null);
        sws_setColorspaceDetails(
                scaler,
                sws_getCoefficients(layout.matrix),
                layout.full ? 1 : 0,
                sws_getCoefficients(swscale.SWS_CS_DEFAULT),
                1,
                0,
                1 << 16,
                1 << 16);
        AVFrame rgb = avutil.av_frame_alloc();
        rgb.format(avutil.AV_PIX_FMT_RGB24).width(WIDTH).height(HEIGHT);
        avutil.av_frame_get_buffer(rgb, 0);
        sws_scale(scaler, frame.data(), frame.linesize(), 0, HEIGHT, rgb.data(), rgb.linesize());
        swscale.sws_freeContext(scaler);
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            rgb.data(0).getPointer((long) y * rgb.linesize(0)).get(codes, 3 * y * WIDTH, 3 * WIDTH);
        }
        avutil.av_frame_free(rgb);
        return new PackedFrame(WIDTH, HEIGHT, 8, ByteBuffer.wrap(codes), IccProfile.srgb());
    }
}
