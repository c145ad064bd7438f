package ebblight.imaging;

/**
 * A frame as its file holds it, upright: code values of red, green, blue, read row by row, and the profile that says
 * what light they stand for.
 */
abstract class DecodedFrame {

    /** In place of a code: the frame has nothing at this pixel. */
    static final int ABSENT = -1;

    private final int width;
    private final int height;
    private final int bits;
    private final IccProfile profile;

    DecodedFrame(int width, int height, int bits, IccProfile profile) {
        this.width = width;
        this.height = height;
        this.bits = bits;
        this.profile = profile;
    }

    final int width() {
        return width;
    }

    final int height() {
        return height;
    }

    final int samples() {
        return 3 * width * height;
    }

    /** Bits of a code: 8, 12 or 16. */
    final int bits() {
        return bits;
    }

    final IccProfile profile() {
        return profile;
    }

    /** A reader for one thread. */
    abstract RowReader rows();

    /** Reads rows of a frame; keeps its own scratch memory. */
    interface RowReader {
        /** Writes the codes of row {@code y} into the first {@code width} places of three arrays. */
        void read(int y, int[] red, int[] green, int[] blue);
    }

    /** Three arrays for the codes of a row. */
    final int[][] rowMemory() {
        return new int[3][width];
    }
}
