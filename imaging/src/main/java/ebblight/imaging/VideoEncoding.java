package ebblight.imaging;

import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;

/**
 * Turns codes of red, green, blue into planes of luma and of chroma at half the size: BT.709 in limited range (ITU-R
 * BT.709-6, 3.3 to 3.5), chroma beside the left one of its two pixels and between its two rows, where H.264 has it.
 */
final class VideoEncoding {

    private static final double RED = 0.2126;
    private static final double BLUE = 0.0722;
    private static final double GREEN = 1 - RED - BLUE;

    private final int width;
    private final int height;
    private final byte[] row;
    private final double[] red;
    private final double[] green;
    private final double[] blue;

    VideoEncoding(int width, int height) {
        this.width = width;
        this.height = height;
        row = new byte[width];
        red = new double[width];
        green = new double[width];
        blue = new double[width];
    }

    void write(byte[] rgb, AVFrame frame) {
        BytePointer luma = frame.data(0);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int q = 3 * (y * width + x);
                double light = RED * (rgb[q] & 0xFF) + GREEN * (rgb[q + 1] & 0xFF) + BLUE * (rgb[q + 2] & 0xFF);
                row[x] = (byte) Math.round(16 + 219 * light / 255);
            }
            luma.position((long) y * frame.linesize(0)).put(row, 0, width);
        }
        luma.position(0);
        for (int v = 0; v < height / 2; v++) {
            pairOfRows(rgb, 2 * v);
            chromaRow(frame, 1, v, blue, 2 * (1 - BLUE));
            chromaRow(frame, 2, v, red, 2 * (1 - RED));
        }
    }

    /** The mean of two rows. */
    private void pairOfRows(byte[] rgb, int y) {
        for (int x = 0; x < width; x++) {
            int q = 3 * (y * width + x);
            int below = q + 3 * width;
            red[x] = ((rgb[q] & 0xFF) + (rgb[below] & 0xFF)) / 510.0;
            green[x] = ((rgb[q + 1] & 0xFF) + (rgb[below + 1] & 0xFF)) / 510.0;
            blue[x] = ((rgb[q + 2] & 0xFF) + (rgb[below + 2] & 0xFF)) / 510.0;
        }
    }

    private void chromaRow(AVFrame frame, int plane, int v, double[] colour, double span) {
        for (int u = 0; u < width / 2; u++) {
            double sum = 2 * difference(colour, 2 * u)
                    + difference(colour, Math.max(0, 2 * u - 1))
                    + difference(colour, 2 * u + 1);
            row[u] = (byte) Math.round(128 + 224 * sum / (4 * span));
        }
        BytePointer chroma = frame.data(plane);
        chroma.position((long) v * frame.linesize(plane)).put(row, 0, width / 2);
        chroma.position(0);
    }

    private double difference(double[] colour, int x) {
        return colour[x] - (RED * red[x] + GREEN * green[x] + BLUE * blue[x]);
    }
}
