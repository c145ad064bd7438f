package ebblight.imaging.card;

/**
 * A frame in square cells of whole pixels, about {@value #ACROSS} across: how bright each is and how much fine detail
 * it holds, in 1/{@value #STEPS} stop. Small enough to keep thousands of frames.
 */
final class Cells {

    static final int ACROSS = 180;

    /** Parts of a stop in which levels and details are kept. */
    static final int STEPS = 1024;

    /** In place of a level: clipped, or too dark to say. */
    static final short UNKNOWN = Short.MIN_VALUE;

    private final int size;
    private final int width;
    private final int height;
    private final short[] level;
    private final short[] across;
    private final short[] down;

    Cells(int size, int width, int height, short[] level, short[] across, short[] down) {
        this.size = size;
        this.width = width;
        this.height = height;
        this.level = level;
        this.across = across;
        this.down = down;
    }

    /** Pixels along a side of a cell of a picture that is {@code pictureWidth} wide. */
    static int size(int pictureWidth) {
        return Math.max(2, (pictureWidth + ACROSS - 1) / ACROSS);
    }

    int size() {
        return size;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int count() {
        return level.length;
    }

    boolean known(int cell) {
        return level[cell] != UNKNOWN;
    }

    /** log2 of the mean luminance, white = 0; only where {@link #known}. */
    double level(int cell) {
        return level[cell] / (double) STEPS;
    }

    /** log2 of the contrast from pixel to pixel across, noise taken off. */
    double across(int cell) {
        return across[cell] / (double) STEPS;
    }

    /** log2 of the contrast from pixel to pixel down, noise taken off. */
    double down(int cell) {
        return down[cell] / (double) STEPS;
    }

    /** log2 of the contrast in both directions together. */
    double detail(int cell) {
        double sum = Math.pow(4, across(cell)) + Math.pow(4, down(cell));
        return 0.5 * (Math.log(sum) / Math.log(2) - 1);
    }

    boolean sameShape(Cells other) {
        return width == other.width && height == other.height;
    }
}
