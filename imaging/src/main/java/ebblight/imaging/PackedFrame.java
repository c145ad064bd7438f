package ebblight.imaging;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;

/** A frame whose samples lie pixel by pixel in one piece of memory: bytes, or 16 bits in the machine's order. */
final class PackedFrame extends DecodedFrame {

    private final ByteBuffer memory;

    /**
     * A frame over {@code memory}, which must stay untouched as long as this is read.
     *
     * @param bits 8, or 12 or 16 in two bytes a sample
     */
    PackedFrame(int width, int height, int bits, ByteBuffer memory, IccProfile profile) {
        super(width, height, bits, profile);
        this.memory = memory.duplicate().order(ByteOrder.nativeOrder());
        long needed = (long) samples() * (bits == 8 ? 1 : 2);
        if (memory.capacity() < needed) {
            throw new IllegalArgumentException("the frame needs " + needed + " bytes, had " + memory.capacity());
        }
    }

    /** The frame's samples in one piece, copied where they are not. */
    static PackedFrame of(DecodedFrame frame) {
        if (frame instanceof PackedFrame packed) {
            return packed;
        }
        int w = frame.width();
        short[] codes = new short[frame.samples()];
        RowReader rows = frame.rows();
        int[][] row = frame.rowMemory();
        for (int y = 0; y < frame.height(); y++) {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 0, q = 3 * y * w; x < w; x++) {
                for (int c = 0; c < 3; c++) {
                    codes[q++] = (short) row[c][x];
                }
            }
        }
        return of16(w, frame.height(), frame.bits(), codes, frame.profile());
    }

    /** The same frame in memory that lives as long as it does. */
    PackedFrame ofItsOwn() {
        ByteBuffer own = ByteBuffer.allocateDirect(memory.capacity());
        own.put(0, memory, 0, memory.capacity());
        return new PackedFrame(width(), height(), bits(), own, profile());
    }

    static PackedFrame of16(int width, int height, int bits, short[] codes, IccProfile profile) {
        ByteBuffer memory = ByteBuffer.allocateDirect(2 * codes.length).order(ByteOrder.nativeOrder());
        memory.asShortBuffer().put(codes);
        return new PackedFrame(width, height, bits, memory, profile);
    }

    /** Code value of sample {@code i}. */
    int code(int i) {
        return bits() == 8 ? memory.get(i) & 0xFF : memory.getShort(2 * i) & 0xFFFF;
    }

    /** Copies 8-bit codes from sample {@code from} on. */
    void bytes(int from, byte[] out, int count) {
        memory.get(from, out, 0, count);
    }

    @Override
    RowReader rows() {
        int n = 3 * width();
        if (bits() == 8) {
            byte[] row = new byte[n];
            return (y, red, green, blue) -> {
                memory.get(y * n, row, 0, n);
                for (int x = 0, q = 0; q < n; x++, q += 3) {
                    red[x] = row[q] & 0xFF;
                    green[x] = row[q + 1] & 0xFF;
                    blue[x] = row[q + 2] & 0xFF;
                }
            };
        }
        ShortBuffer shorts = memory.asShortBuffer();
        short[] row = new short[n];
        return (y, red, green, blue) -> {
            shorts.get(y * n, row, 0, n);
            for (int x = 0, q = 0; q < n; x++, q += 3) {
                red[x] = row[q] & 0xFFFF;
                green[x] = row[q + 1] & 0xFFFF;
                blue[x] = row[q + 2] & 0xFFFF;
            }
        };
    }
}
