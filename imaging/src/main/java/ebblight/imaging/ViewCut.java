package ebblight.imaging;

/**
 * The middle of a picture that another, longer lens would see, in pixels of the picture at survey size.
 *
 * @param left columns cut on either side, 0 or more
 * @param top rows cut above and below, 0 or more
 * @param wholeWidth columns before cutting
 * @param wholeHeight rows before cutting
 */
public record ViewCut(int left, int top, int wholeWidth, int wholeHeight) {

    private static final int SAMPLE_BYTES = 6;

    /** What a lens {@code zoom} times as long sees; everything when it is no longer. */
    static ViewCut of(int wholeWidth, int wholeHeight, double zoom) {
        double out = zoom > 1 ? (1 - 1 / zoom) / 2 : 0;
        return new ViewCut(
                (int) Math.round(wholeWidth * out), (int) Math.round(wholeHeight * out), wholeWidth, wholeHeight);
    }

    public int width() {
        return wholeWidth - 2 * left;
    }

    public int height() {
        return wholeHeight - 2 * top;
    }

    public boolean isWhole() {
        return left == 0 && top == 0;
    }

    /** The share of a fraction of the whole width, as a fraction of the cut's. */
    public double xInside(double x) {
        return (x * wholeWidth - left) / width();
    }

    public double yInside(double y) {
        return (y * wholeHeight - top) / height();
    }

    public double xOutside(double x) {
        return (x * width() + left) / wholeWidth;
    }

    public double yOutside(double y) {
        return (y * height() + top) / wholeHeight;
    }

    /** The cut of a picture of three 16-bit samples a pixel. */
    byte[] of(byte[] whole) {
        if (isWhole()) {
            return whole;
        }
        int row = SAMPLE_BYTES * width();
        byte[] cut = new byte[row * height()];
        for (int y = 0; y < height(); y++) {
            System.arraycopy(whole, SAMPLE_BYTES * ((y + top) * wholeWidth + left), cut, y * row, row);
        }
        return cut;
    }
}
