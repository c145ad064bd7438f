package ebblight.imaging;

import java.nio.ByteBuffer;

/**
 * Samples of one component of a video frame at its own size, wherever they lie in memory.
 *
 * @param stride bytes from row to row
 * @param step bytes from sample to sample
 * @param offset bytes before the first sample of a row
 * @param shift bits to drop from two bytes, little-endian; −1 for samples of one byte
 */
record VideoSamples(int width, int height, int stride, int step, int offset, int shift, ByteBuffer memory) {

    /** Reads rows; for one thread. */
    interface Reader {
        void read(int y, int[] out);
    }

    Reader reader() {
        int bytes = step * (width - 1) + (shift < 0 ? 1 : 2);
        byte[] row = new byte[bytes];
        if (shift >= 0) {
            return (y, out) -> {
                memory.get(y * stride + offset, row, 0, bytes);
                for (int i = 0, q = 0; i < width; i++, q += step) {
                    out[i] = ((row[q] & 0xFF) | (row[q + 1] & 0xFF) << 8) >> shift;
                }
            };
        }
        if (step > 1) {
            return (y, out) -> {
                memory.get(y * stride + offset, row, 0, bytes);
                for (int i = 0, q = 0; i < width; i++, q += step) {
                    out[i] = row[q] & 0xFF;
                }
            };
        }
        return (y, out) -> {
            memory.get(y * stride + offset, row, 0, bytes);
            for (int i = 0; i < bytes; i++) {
                out[i] = row[i] & 0xFF;
            }
        };
    }

    /** The samples turned clockwise by quarter turns. */
    VideoSamples turned(int quarterTurns) {
        int w = quarterTurns % 2 == 0 ? width : height;
        int h = quarterTurns % 2 == 0 ? height : width;
        byte[] out = new byte[2 * w * h];
        Reader reader = reader();
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            reader.read(y, row);
            int first = quarterTurns == 1 ? height - 1 - y : quarterTurns == 2 ? w * h - 1 - y * w : (h - 1) * w + y;
            int by = quarterTurns == 1 ? w : quarterTurns == 2 ? -1 : -w;
            for (int x = 0, q = first; x < width; x++, q += by) {
                out[2 * q] = (byte) row[x];
                out[2 * q + 1] = (byte) (row[x] >> 8);
            }
        }
        return new VideoSamples(w, h, 2 * w, 2, 0, 0, ByteBuffer.wrap(out));
    }
}
