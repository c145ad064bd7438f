package ebblight.imaging;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * A decoded frame of a clip, upright: its planes turned into 12-bit codes of red, green, blue row by row, by the
 * stream's own matrix and range. Chroma lies where the stream says and is filled in with straight lines.
 */
final class VideoFrame extends DecodedFrame {

    private static final int BITS = 12;
    private static final int WHITE = (1 << BITS) - 1;
    /** Binary places of the matrix arithmetic: what it sums stays below 2.2 · 4095 · 2^17 and fits into an int. */
    private static final int PLACES = 17;
    /** Bits that samples are cut to, so that the factors of the matrix keep five digits. */
    private static final int SAMPLE_BITS = 14;

    private final VideoPlane[] planes;
    private final VideoColours colours;
    private final int depth;

    private VideoFrame(int width, int height, VideoPlane[] planes, VideoColours colours, int depth) {
        super(width, height, BITS, colours.profile());
        this.planes = planes;
        this.colours = colours;
        this.depth = depth;
    }

    /** The frame over the memory of {@code frame}, which must stay untouched as long as this is read. */
    static VideoFrame of(AVFrame frame, int quarterTurns) {
        VideoPlane[] planes = VideoPlane.of(frame, quarterTurns);
        VideoSamples whole = planes[0].samples();
        int depth = avutil.av_pix_fmt_desc_get(frame.format()).comp(0).depth();
        return new VideoFrame(whole.width(), whole.height(), planes, VideoColours.of(frame), depth);
    }

    @Override
    RowReader rows() {
        VideoSamples.Reader[] readers = new VideoSamples.Reader[planes.length];
        for (int k = 0; k < planes.length; k++) {
            readers[k] = planes[k].reader(width());
        }
        return colours.rgb() || planes.length < 3 ? direct(readers) : byMatrix(readers);
    }

    private RowReader direct(VideoSamples.Reader[] readers) {
        int largest = 16 * ((1 << depth) - 1);
        boolean grey = readers.length < 3;
        double black = grey ? 16 * colours.lumaBlack() * (1 << (depth - 8)) : 0;
        double span = grey ? 16 * colours.lumaSpan(depth) * (1 << (depth - 8)) : largest;
        return (y, red, green, blue) -> {
            int[][] rows = {red, green, blue};
            for (int c = 0; c < 3; c++) {
                readers[grey ? 0 : c].read(y, rows[c]);
                for (int x = 0; x < width(); x++) {
                    rows[c][x] = clip((int) Math.round((rows[c][x] - black) * WHITE / span));
                }
            }
        };
    }

    private RowReader byMatrix(VideoSamples.Reader[] readers) {
        int n = width();
        // Planes come in sixteenths of a code.
        int drop = Math.max(0, depth + 4 - SAMPLE_BITS);
        int stepsPerCode8 = 1 << (depth + 4 - 8 - drop);
        double one = (double) WHITE * (1 << PLACES);
        double lumaSpan = colours.lumaSpan(depth);
        double chromaUnit = one / (stepsPerCode8 * colours.chromaSpan(depth));
        int lumaGain = (int) Math.round(one / (stepsPerCode8 * lumaSpan));
        int lumaZero = (int) Math.round(-one * colours.lumaBlack() / lumaSpan) + (1 << (PLACES - 1));
        int middle = 128 * stepsPerCode8;
        double[] m = colours.matrix();
        int redCr = (int) Math.round(chromaUnit * m[0]);
        int greenCb = (int) Math.round(chromaUnit * m[1]);
        int greenCr = (int) Math.round(chromaUnit * m[2]);
        int blueCb = (int) Math.round(chromaUnit * m[3]);
        int[] luma = new int[n];
        int[] cb = new int[n];
        int[] cr = new int[n];
        return (y, red, green, blue) -> {
            readers[0].read(y, luma);
            readers[1].read(y, cb);
            readers[2].read(y, cr);
            for (int x = 0; x < n; x++) {
                luma[x] = lumaGain * (luma[x] >> drop) + lumaZero;
                cb[x] = (cb[x] >> drop) - middle;
                cr[x] = (cr[x] >> drop) - middle;
            }
            // One simple loop a colour: the compiler makes vectors of them.
            for (int x = 0; x < n; x++) {
                red[x] = clip((luma[x] + redCr * cr[x]) >> PLACES);
            }
            for (int x = 0; x < n; x++) {
                green[x] = clip((luma[x] + greenCb * cb[x] + greenCr * cr[x]) >> PLACES);
            }
            for (int x = 0; x < n; x++) {
                blue[x] = clip((luma[x] + blueCb * cb[x]) >> PLACES);
            }
        };
    }

    /** Between 0 and white; by signs, because the compiler makes no vectors of smallest and largest. */
    private static int clip(int code) {
        int under = WHITE - (code & ~(code >> 31));
        return WHITE - (under & ~(under >> 31));
    }
}
