package ebblight.imaging;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/** A TIFF 6.0 image file directory in little-endian order, its values kept until its place in the file is known. */
final class TiffDirectory {

    static final int BYTE = 1;
    static final int ASCII = 2;
    static final int SHORT = 3;
    static final int LONG = 4;
    static final int RATIONAL = 5;
    static final int UNDEFINED = 7;
    static final int SIGNED_RATIONAL = 10;

    private record Entry(int type, int count, byte[] data) {}

    private final Map<Integer, Entry> entries = new TreeMap<>();

    void ascii(int tag, String text) {
        byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
        entries.put(tag, new Entry(ASCII, bytes.length, bytes));
    }

    void shorts(int tag, int... values) {
        ByteBuffer b = ByteBuffer.allocate(2 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int v : values) {
            b.putShort((short) v);
        }
        entries.put(tag, new Entry(SHORT, values.length, b.array()));
    }

    void longs(int tag, int... values) {
        ByteBuffer b = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int v : values) {
            b.putInt(v);
        }
        entries.put(tag, new Entry(LONG, values.length, b.array()));
    }

    void rational(int tag, double... values) {
        ByteBuffer b = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double value : values) {
            long denominator = value >= 1000 ? 1000 : value >= 1 ? 100_000 : 1_000_000;
            b.putInt((int) Math.round(value * denominator)).putInt((int) denominator);
        }
        entries.put(tag, new Entry(RATIONAL, values.length, b.array()));
    }

    /** Fractions of any sign, to a millionth. */
    void signedRationals(int tag, double... values) {
        ByteBuffer b = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double v : values) {
            b.putInt((int) Math.round(v * 1_000_000)).putInt(1_000_000);
        }
        entries.put(tag, new Entry(SIGNED_RATIONAL, values.length, b.array()));
    }

    /** Fractions above 0, to a millionth. */
    void rationals(int tag, double... values) {
        signedRationals(tag, values);
        Entry entry = Objects.requireNonNull(entries.get(tag));
        entries.put(tag, new Entry(RATIONAL, values.length, entry.data));
    }

    void bytes(int tag, byte[] bytes) {
        entries.put(tag, new Entry(BYTE, bytes.length, bytes));
    }

    void undefined(int tag, byte[] bytes) {
        entries.put(tag, new Entry(UNDEFINED, bytes.length, bytes));
    }

    /** Bytes that the directory and its values take. */
    int size() {
        int size = 2 + 12 * entries.size() + 4;
        for (Entry entry : entries.values()) {
            size += entry.data.length > 4 ? entry.data.length + entry.data.length % 2 : 0;
        }
        return size;
    }

    /** The directory as it stands at {@code offset} of the file, no directory after it. */
    byte[] bytes(int offset) {
        ByteBuffer b = ByteBuffer.allocate(size()).order(ByteOrder.LITTLE_ENDIAN);
        b.putShort((short) entries.size());
        int at = 2 + 12 * entries.size() + 4;
        for (Map.Entry<Integer, Entry> tag : entries.entrySet()) {
            Entry entry = tag.getValue();
            b.putShort((short) (int) tag.getKey()).putShort((short) entry.type).putInt(entry.count);
            if (entry.data.length <= 4) {
                b.put(entry.data);
                b.position(b.position() + 4 - entry.data.length);
            } else {
                b.putInt(offset + at);
                System.arraycopy(entry.data, 0, b.array(), at, entry.data.length);
                at += entry.data.length + entry.data.length % 2;
            }
        }
        b.putInt(0);
        return b.array();
    }
}
