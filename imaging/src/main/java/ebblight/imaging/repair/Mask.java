package ebblight.imaging.repair;

/** Where a picture was changed: 255 for a pixel that was replaced, less for light taken off smoothly, 0 for untouched. */
public final class Mask {

    private static final int SMOOTH = 160;

    private final byte[] values;

    Mask(int pixels) {
        values = new byte[pixels];
    }

    /** Values from 0 to 255, row by row; not a copy. */
    public byte[] values() {
        return values;
    }

    void replaced(int pixel) {
        values[pixel] = (byte) 255;
    }

    /** Light was taken off; {@code share} of the most that was taken off anywhere. */
    void lessened(int pixel, double share) {
        int value = (int) Math.round(SMOOTH * Math.max(0, Math.min(1, share)));
        values[pixel] = (byte) Math.max(values[pixel] & 0xFF, value);
    }
}
