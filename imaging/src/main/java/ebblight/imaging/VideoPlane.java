package ebblight.imaging;

import org.bytedeco.ffmpeg.avutil.AVComponentDescriptor;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.global.avutil;

/**
 * One component of a decoded video frame, upright, and where its samples lie between the pixels of the picture.
 *
 * @param halvedX 1 where one sample stands for two pixels across
 * @param halvedY 1 where one sample stands for two pixels down
 * @param placeX place of such a sample between its two pixels, in half pixels from the first: 0, 1 or 2
 * @param placeY the same, downward
 */
record VideoPlane(VideoSamples samples, int halvedX, int halvedY, int placeX, int placeY) {

    /** Whether frames of this layout can be read without converting them first. */
    static boolean reads(AVFrame frame) {
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(frame.format());
        long odd = avutil.AV_PIX_FMT_FLAG_BE
                | avutil.AV_PIX_FMT_FLAG_PAL
                | avutil.AV_PIX_FMT_FLAG_BITSTREAM
                | avutil.AV_PIX_FMT_FLAG_HWACCEL
                | avutil.AV_PIX_FMT_FLAG_BAYER
                | avutil.AV_PIX_FMT_FLAG_FLOAT
                | avutil.AV_PIX_FMT_FLAG_XYZ;
        int depth = layout.comp(0).depth();
        boolean alike = true;
        for (int k = 0; k < components(layout); k++) {
            AVComponentDescriptor c = layout.comp(k);
            alike &= c.depth() == depth && frame.linesize(c.plane()) > 0;
        }
        return alike
                && (layout.flags() & odd) == 0
                && depth >= 8
                && depth <= 16
                && layout.log2_chroma_w() <= 1
                && layout.log2_chroma_h() <= 1;
    }

    private static int components(AVPixFmtDescriptor layout) {
        return layout.nb_components() >= 3 ? 3 : 1;
    }

    /** The components of a frame, turned clockwise by quarter turns. */
    static VideoPlane[] of(AVFrame frame, int quarterTurns) {
        AVPixFmtDescriptor layout = avutil.av_pix_fmt_desc_get(frame.format());
        VideoPlane[] planes = new VideoPlane[components(layout)];
        int[] place = places(frame, quarterTurns);
        boolean swap = quarterTurns % 2 == 1;
        for (int k = 0; k < planes.length; k++) {
            boolean chroma = k > 0 && (layout.flags() & avutil.AV_PIX_FMT_FLAG_RGB) == 0;
            int hx = chroma ? layout.log2_chroma_w() : 0;
            int hy = chroma ? layout.log2_chroma_h() : 0;
            VideoSamples samples =
                    samples(frame, layout.comp(k), (frame.width() + hx) >> hx, (frame.height() + hy) >> hy);
            planes[k] = new VideoPlane(
                    quarterTurns == 0 ? samples : samples.turned(quarterTurns),
                    swap ? hy : hx,
                    swap ? hx : hy,
                    place[0],
                    place[1]);
        }
        return planes;
    }

    private static VideoSamples samples(AVFrame frame, AVComponentDescriptor c, int w, int h) {
        int stride = frame.linesize(c.plane());
        return new VideoSamples(
                w,
                h,
                stride,
                c.step(),
                c.offset(),
                c.depth() == 8 ? -1 : c.shift(),
                frame.data(c.plane()).capacity((long) stride * h).asByteBuffer());
    }

    /** Where chroma lies between pixels, in half pixels right and down; MPEG's place where the stream says nothing. */
    private static int[] places(AVFrame frame, int quarterTurns) {
        int right =
                switch (frame.chroma_location()) {
                    case avutil.AVCHROMA_LOC_CENTER, avutil.AVCHROMA_LOC_TOP, avutil.AVCHROMA_LOC_BOTTOM -> 1;
                    default -> 0;
                };
        int down =
                switch (frame.chroma_location()) {
                    case avutil.AVCHROMA_LOC_TOPLEFT, avutil.AVCHROMA_LOC_TOP -> 0;
                    case avutil.AVCHROMA_LOC_BOTTOMLEFT, avutil.AVCHROMA_LOC_BOTTOM -> 2;
                    default -> 1;
                };
        return switch (quarterTurns) {
            case 1 -> new int[] {2 - down, right};
            case 2 -> new int[] {2 - right, 2 - down};
            case 3 -> new int[] {down, 2 - right};
            default -> new int[] {right, down};
        };
    }

    /** Reads rows of the picture's {@code width} in sixteenths of a code, straight lines between samples. */
    VideoSamples.Reader reader(int width) {
        VideoSamples.Reader rows = samples.reader();
        if (halvedX == 0 && halvedY == 0) {
            return (y, out) -> {
                rows.read(y, out);
                for (int x = 0; x < width; x++) {
                    out[x] <<= 4;
                }
            };
        }
        int n = samples.width();
        Mixer mixer = new Mixer(rows);
        // One sample more at both ends: the border is carried outward.
        int[] mixed = new int[n + 2];
        int a = placeX;
        int b = 4 - placeX;
        int c = 2 + placeX;
        int d = 2 - placeX;
        return (y, out) -> {
            mixer.mix(y, mixed);
            mixed[0] = mixed[1];
            mixed[n + 1] = mixed[n];
            if (halvedX == 0) {
                for (int x = 0; x < width; x++) {
                    out[x] = 4 * mixed[x + 1];
                }
                return;
            }
            int pairs = width / 2;
            for (int j = 0; j < pairs; j++) {
                int here = mixed[j + 1];
                out[2 * j] = a * mixed[j] + b * here;
                out[2 * j + 1] = c * here + d * mixed[j + 2];
            }
            if (width % 2 == 1) {
                out[width - 1] = a * mixed[n - 1] + b * mixed[n];
            }
        };
    }

    /** Mixes rows of samples into rows of the picture; the two rows last read are kept. */
    private final class Mixer {
        private final VideoSamples.Reader rows;
        private int[] first = new int[samples.width()];
        private int[] second = new int[samples.width()];
        private int firstRow = -1;
        private int secondRow = -1;

        Mixer(VideoSamples.Reader rows) {
            this.rows = rows;
        }

        /** Row {@code y} of the picture at the component's own width, in quarters of a code, from place 1 on. */
        void mix(int y, int[] mixed) {
            int j = y >> halvedY;
            boolean odd = halvedY == 1 && (y & 1) == 1;
            int weight = halvedY == 0 ? 0 : odd ? 2 - placeY : placeY;
            int other = Math.max(0, Math.min(samples.height() - 1, odd ? j + 1 : j - 1));
            if (firstRow != j) {
                if (secondRow == j) {
                    swap();
                } else {
                    rows.read(j, first);
                    firstRow = j;
                }
            }
            if (weight > 0 && secondRow != other) {
                rows.read(other, second);
                secondRow = other;
            }
            int[] here = first;
            int[] there = second;
            int rest = 4 - weight;
            for (int i = 0; i < here.length; i++) {
                mixed[i + 1] = rest * here[i] + weight * there[i];
            }
        }

        private void swap() {
            int[] samplesOfFirst = first;
            first = second;
            second = samplesOfFirst;
            int row = firstRow;
            firstRow = secondRow;
            secondRow = row;
        }
    }
}
