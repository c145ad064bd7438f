package ebblight.engine;

/** Planes of 32-bit floats as little-endian bytes, one plane after the other. */
public final class Floats {

    private Floats() {}

    static byte[] bytes(float[]... planes) {
        int n = 0;
        for (float[] plane : planes) {
            n += plane.length;
        }
        byte[] out = new byte[4 * n];
        int q = 0;
        for (float[] plane : planes) {
            for (float v : plane) {
                int bits = Float.floatToIntBits(v);
                out[q++] = (byte) bits;
                out[q++] = (byte) (bits >> 8);
                out[q++] = (byte) (bits >> 16);
                out[q++] = (byte) (bits >> 24);
            }
        }
        return out;
    }

    /** Plane {@code index} of planes of {@code length} samples. */
    public static float[] plane(byte[] bytes, int index, int length) {
        float[] plane = new float[length];
        for (int i = 0, q = 4 * index * length; i < length; i++, q += 4) {
            plane[i] = Float.intBitsToFloat((bytes[q] & 0xFF)
                    | (bytes[q + 1] & 0xFF) << 8
                    | (bytes[q + 2] & 0xFF) << 16
                    | (bytes[q + 3] & 0xFF) << 24);
        }
        return plane;
    }
}
