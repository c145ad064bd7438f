package ebblight.imaging;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Makes frames smaller by area means of linear light: every source pixel counts by how much of it falls into the new
 * one. Works row by row of the source, straight from its code values.
 */
final class AreaMean {

    private final int width;
    private final int height;
    private final int newWidth;
    private final int newHeight;
    /** Threads may make it twice; it is the same every time. */
    private volatile @Nullable Table table;

    AreaMean(int width, int height, int newWidth, int newHeight) {
        this.width = width;
        this.height = height;
        this.newWidth = newWidth;
        this.newHeight = newHeight;
    }

    int newWidth() {
        return newWidth;
    }

    int newHeight() {
        return newHeight;
    }

    /** The smaller frame as 16-bit linear samples, little-endian, 65535 = white. */
    byte[] linear16(DecodedFrame frame) {
        float[] linear = linear(frame);
        byte[] out = new byte[6 * newWidth * newHeight];
        double step = (double) height / newHeight;
        DecodedFrame.RowReader rows = frame.rows();
        int[][] codes = frame.rowMemory();
        float[][] columns = new float[3][width];
        int read = -1;
        for (int v = 0; v < newHeight; v++) {
            double top = v * step;
            double bottom = Math.min(height, top + step);
            for (float[] column : columns) {
                Arrays.fill(column, 0);
            }
            for (int y = (int) top; y < bottom; y++) {
                if (y != read) {
                    rows.read(y, codes[0], codes[1], codes[2]);
                    read = y;
                }
                float weight = (float) (Math.min(bottom, y + 1) - Math.max(top, y));
                for (int c = 0; c < 3; c++) {
                    add(codes[c], linear, weight, columns[c]);
                }
            }
            for (int c = 0; c < 3; c++) {
                across(columns[c], step, out, 6 * v * newWidth + 2 * c);
            }
        }
        return out;
    }

    private void add(int[] codes, float[] linear, float weight, float[] columns) {
        int largest = linear.length - 1; // as a mask: it spares the check of every index
        for (int x = 0; x < width; x++) {
            columns[x] += weight * linear[codes[x] & largest];
        }
    }

    /** Means of the columns that fall into each new pixel, written every third sample from {@code at} on. */
    private void across(float[] columns, double rows, byte[] out, int at) {
        double step = (double) width / newWidth;
        double scale = 65535 / (step * rows);
        for (int u = 0, q = at; u < newWidth; u++, q += 6) {
            double left = u * step;
            double right = Math.min(width, left + step);
            int first = (int) left;
            int last = (int) Math.ceil(right) - 1;
            double sum = (first + 1 - left) * columns[first];
            for (int x = first + 1; x < last; x++) {
                sum += columns[x];
            }
            sum += last > first ? (right - last) * columns[last] : 0;
            int code = WholeCode.nearest(Math.max(0, Math.min(65535, sum * scale)));
            out[q] = (byte) code;
            out[q + 1] = (byte) (code >> 8);
        }
    }

    /** Light of every code; that of the frame before where it serves. */
    private float[] linear(DecodedFrame frame) {
        Table known = table;
        if (known == null || known.bits != frame.bits() || !known.profile.sameAs(frame.profile())) {
            known = new Table(
                    frame.profile(), frame.bits(), frame.profile().curve().table(frame.bits()));
            table = known;
        }
        return known.linear;
    }

    private record Table(IccProfile profile, int bits, float[] linear) {}
}
