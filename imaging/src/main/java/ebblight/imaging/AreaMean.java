package ebblight.imaging;

import java.util.Arrays;

/**
 * Makes frames smaller by area means of linear light: every source pixel counts by how much of it falls into the new
 * one. Works row by row of the source, straight from its code values.
 */
final class AreaMean {

    private final int width;
    private final int height;
    private final int newWidth;
    private final int newHeight;

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
        float[] linear = frame.profile().curve().table(frame.bits());
        byte[] out = new byte[6 * newWidth * newHeight];
        double sx = (double) width / newWidth;
        double sy = (double) height / newHeight;
        double scale = 65535 / (sx * sy);
        float[] row = new float[3 * newWidth];
        float[] sum = new float[3 * newWidth];
        int y = 0;
        for (int v = 0; v < newHeight; v++) {
            double bottom = (v + 1) * sy;
            Arrays.fill(sum, 0);
            double at = v * sy;
            while (at < bottom - 1e-9) {
                y = Math.min(height - 1, (int) (at + 1e-9));
                double end = Math.min(bottom, y + 1);
                shrinkRow(frame, y, linear, sx, row);
                float weight = (float) (end - at);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += weight * row[i];
                }
                at = end;
            }
            for (int i = 0; i < sum.length; i++) {
                int code = (int) Math.max(0, Math.min(65535, Math.round(sum[i] * scale)));
                int q = 2 * (v * sum.length + i);
                out[q] = (byte) code;
                out[q + 1] = (byte) (code >> 8);
            }
        }
        return out;
    }

    private void shrinkRow(DecodedFrame frame, int y, float[] linear, double sx, float[] row) {
        boolean narrow = frame.bits() == 8;
        byte[] codes8 = frame.codes8();
        short[] codes16 = frame.codes16();
        int base = 3 * y * width;
        for (int u = 0; u < newWidth; u++) {
            double left = u * sx;
            double right = Math.min(width, (u + 1) * sx);
            int first = (int) left;
            int last = Math.min(width - 1, (int) Math.ceil(right) - 1);
            float r = 0;
            float g = 0;
            float b = 0;
            for (int x = first; x <= last; x++) {
                float weight = x == first || x == last ? (float) (Math.min(right, x + 1) - Math.max(left, x)) : 1;
                int q = base + 3 * x;
                if (narrow) {
                    r += weight * linear[codes8[q] & 0xFF];
                    g += weight * linear[codes8[q + 1] & 0xFF];
                    b += weight * linear[codes8[q + 2] & 0xFF];
                } else {
                    r += weight * linear[codes16[q] & 0xFFFF];
                    g += weight * linear[codes16[q + 1] & 0xFFFF];
                    b += weight * linear[codes16[q + 2] & 0xFFFF];
                }
            }
            row[3 * u] = r;
            row[3 * u + 1] = g;
            row[3 * u + 2] = b;
        }
    }
}
