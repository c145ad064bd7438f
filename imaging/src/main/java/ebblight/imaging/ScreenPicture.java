package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_COLOR;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_REDUCED_COLOR_2;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_REDUCED_COLOR_4;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_REDUCED_COLOR_8;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imdecode;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imencode;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;

/** A picture file made ready for a screen: small for a list, or piece by piece at one pixel for one. */
public final class ScreenPicture {

    private final DecodedFrame frame;

    private ScreenPicture(DecodedFrame frame) {
        this.frame = frame;
    }

    /** Decodes a whole picture. */
    public static ScreenPicture open(Path file) throws IOException {
        DecodedFrame frame = PictureReader.decode(file, ReadableFile.bytes(file));
        IccProfile written = frame.profile().forWriting();
        return new ScreenPicture(frame.profile().sameAs(written) ? frame : new ConvertedFrame(frame, written));
    }

    public int width() {
        return frame.width();
    }

    public int height() {
        return frame.height();
    }

    /** A JPEG of the pixels from {@code left, top}, cut at the picture's border, in sRGB. */
    public byte[] tile(int left, int top, int size) throws IOException {
        int w = Math.min(size, frame.width() - left);
        int h = Math.min(size, frame.height() - top);
        if (left < 0 || top < 0 || w < 1 || h < 1) {
            throw new IOException("the picture has no pixels at " + left + ", " + top);
        }
        short[] codes = new short[3 * w * h];
        double scale = 65535.0 / ((1 << frame.bits()) - 1);
        DecodedFrame.RowReader rows = frame.rows();
        int[][] row = frame.rowMemory();
        for (int y = 0; y < h; y++) {
            rows.read(top + y, row[0], row[1], row[2]);
            for (int x = 0, q = 3 * y * w; x < w; x++) {
                for (int c = 0; c < 3; c++) {
                    codes[q++] = (short) Math.round(scale * row[c][left + x]);
                }
            }
        }
        return JpegWriter.encode(
                new CodedPicture(w, h, codes, frame.profile()),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "Part of a picture"));
    }

    /** A small JPEG of a picture, decoded no larger than needed. */
    public static byte[] thumbnail(Path file, int width) throws IOException {
        byte[] bytes = ReadableFile.bytes(file);
        byte[] coded = PictureReader.isRaw(file)
                ? EmbeddedJpeg.largest(bytes)
                        .orElseThrow(() -> new UnreadableInputException(file, "holds no embedded JPEG"))
                : bytes;
        try (BytePointer pointer = new BytePointer(coded);
                Mat packed = new Mat(1, coded.length, opencv_core.CV_8UC1, pointer);
                Mat mat = reduced(packed, width);
                Mat small = new Mat();
                BytePointer out = new BytePointer()) {
            if (mat.empty()) {
                throw new UnreadableInputException(file, "is not a picture that can be decoded");
            }
            int w = Math.min(width, mat.cols());
            int h = Math.max(1, (int) Math.round((double) mat.rows() * w / mat.cols()));
            resize(mat, small, new Size(w, h), 0, 0, INTER_AREA);
            imencode(".jpg", small, out);
            byte[] jpeg = new byte[(int) out.limit()];
            out.get(jpeg);
            return jpeg;
        }
    }

    /** The picture at an eighth, a quarter, a half or its whole size: the smallest that is twice as wide as wanted. */
    private static Mat reduced(Mat packed, int width) {
        for (int way : new int[] {IMREAD_REDUCED_COLOR_8, IMREAD_REDUCED_COLOR_4, IMREAD_REDUCED_COLOR_2}) {
            Mat mat = imdecode(packed, way);
            if (mat.cols() >= 2 * width || mat.empty()) {
                return mat;
            }
            mat.close();
        }
        return imdecode(packed, IMREAD_COLOR);
    }
}
