package ebblight.core.numeric;

/**
 * A colour picture in memory: three planes of scene-linear light, row by row from the top left, 1 = the value that the
 * file's white stands for. Values above 1 and slightly below 0 may occur. The planes are the picture itself, not
 * copies: whoever holds it may write to it.
 */
public final class RgbPicture {

    private final int width;
    private final int height;
    private final float[] red;
    private final float[] green;
    private final float[] blue;

    private RgbPicture(int width, int height, float[] red, float[] green, float[] blue) {
        this.width = width;
        this.height = height;
        this.red = red;
        this.green = green;
        this.blue = blue;
    }

    /** A black picture of {@code width × height} pixels. */
    public static RgbPicture black(int width, int height) {
        int n = size(width, height);
        return new RgbPicture(width, height, new float[n], new float[n], new float[n]);
    }

    /** A picture over the given planes, each of {@code width · height} samples. */
    public static RgbPicture of(int width, int height, float[] red, float[] green, float[] blue) {
        int n = size(width, height);
        if (red.length != n || green.length != n || blue.length != n) {
            throw new IllegalArgumentException("planes must hold " + n + " samples, held " + red.length + ", "
                    + green.length + ", " + blue.length);
        }
        return new RgbPicture(width, height, red, green, blue);
    }

    private static int size(int width, int height) {
        if (width < 1 || height < 1 || (long) width * height > Integer.MAX_VALUE - 8) {
            throw new IllegalArgumentException("a picture cannot be " + width + " × " + height + " pixels");
        }
        return width * height;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public float[] red() {
        return red;
    }

    public float[] green() {
        return green;
    }

    public float[] blue() {
        return blue;
    }

    /** The plane of channel 0 (red), 1 (green) or 2 (blue). */
    public float[] plane(int channel) {
        return switch (channel) {
            case 0 -> red;
            case 1 -> green;
            case 2 -> blue;
            default -> throw new IllegalArgumentException("channel must be 0, 1 or 2, was " + channel);
        };
    }
}
