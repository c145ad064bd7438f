package ebblight.imaging;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** Writes RGB profiles of the matrix kind with one curve for all channels (ICC.1:2001-04, version 2.1). */
final class IccWriter {

    private static final int HEADER = 128;
    /** D50, the white that colours of a profile refer to (ICC.1:2001-04, annex A). */
    static final double[] D50 = {0.9642, 1, 0.8249};

    private IccWriter() {}

    /**
     * @param like profile whose header is taken over
     * @param white media white point, as a tag of type XYZ
     * @param toXyz linear RGB to XYZ under D50, row by row
     * @param curve tag of type curv
     */
    static byte[] matrixProfile(byte[] like, String name, byte[] white, double[] toXyz, byte[] curve) {
        String[] names = {"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"};
        byte[][] data = {
            description(name),
            copyright(),
            white,
            xyz(toXyz[0], toXyz[3], toXyz[6]),
            xyz(toXyz[1], toXyz[4], toXyz[7]),
            xyz(toXyz[2], toXyz[5], toXyz[8]),
            curve,
            curve,
            curve
        };
        int size = HEADER + 4 + 12 * names.length;
        for (byte[] d : data) {
            size += padded(d.length);
        }
        ByteBuffer out = ByteBuffer.allocate(size);
        out.put(like, 0, HEADER);
        out.putInt(0, size);
        out.putInt(8, 0x02100000);
        for (int i = 84; i < HEADER; i++) {
            out.put(i, (byte) 0);
        }
        out.position(HEADER);
        out.putInt(names.length);
        int at = HEADER + 4 + 12 * names.length;
        for (int k = 0; k < names.length; k++) {
            out.put(names[k].getBytes(StandardCharsets.US_ASCII)).putInt(at).putInt(data[k].length);
            at += padded(data[k].length);
        }
        for (byte[] d : data) {
            out.put(d);
            out.position(HEADER + padded(out.position() - HEADER));
        }
        return out.array();
    }

    private static int padded(int length) {
        return (length + 3) / 4 * 4;
    }

    private static byte[] description(String name) {
        byte[] text = name.getBytes(StandardCharsets.US_ASCII);
        ByteBuffer description = ByteBuffer.allocate(96 + text.length);
        description
                .put("desc".getBytes(StandardCharsets.US_ASCII))
                .putInt(0)
                .putInt(text.length + 1)
                .put(text);
        return description.array();
    }

    private static byte[] copyright() {
        ByteBuffer copyright = ByteBuffer.allocate(32);
        copyright.put("text".getBytes(StandardCharsets.US_ASCII)).putInt(0);
        copyright.put("No copyright".getBytes(StandardCharsets.US_ASCII));
        return copyright.array();
    }

    /** A tag of type curv: light itself. */
    static byte[] linearCurve() {
        ByteBuffer b = ByteBuffer.allocate(12);
        b.put("curv".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(0);
        return b.array();
    }

    /** A tag of type curv: a power of {@code gamma256 / 256}. */
    static byte[] powerCurve(int gamma256) {
        ByteBuffer b = ByteBuffer.allocate(14);
        b.put("curv".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(1).putShort((short) gamma256);
        return b.array();
    }

    /** A tag of type XYZ. */
    static byte[] xyz(double x, double y, double z) {
        ByteBuffer b = ByteBuffer.allocate(20);
        b.put("XYZ ".getBytes(StandardCharsets.US_ASCII)).putInt(0);
        b.putInt((int) Math.round(x * 65536))
                .putInt((int) Math.round(y * 65536))
                .putInt((int) Math.round(z * 65536));
        return b.array();
    }
}
