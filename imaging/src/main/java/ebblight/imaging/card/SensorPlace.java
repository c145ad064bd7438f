package ebblight.imaging.card;

/** Where on the sensor a pixel of an upright picture lies (Exif 2.32, tag 274). */
final class SensorPlace {

    private static final long ROW = 1L << 24;

    private SensorPlace() {}

    /**
     * A number of its own for each place of the sensor.
     *
     * @param orientation that was undone to make the picture upright
     * @param width of the upright picture
     * @param height of the upright picture
     */
    static long of(int orientation, int width, int height, int x, int y) {
        return switch (orientation) {
            case 2 -> y * ROW + width - 1 - x;
            case 3 -> (height - 1L - y) * ROW + width - 1 - x;
            case 4 -> (height - 1L - y) * ROW + x;
            case 5 -> x * ROW + y;
            case 6 -> (width - 1L - x) * ROW + y;
            case 7 -> (width - 1L - x) * ROW + height - 1 - y;
            case 8 -> x * ROW + height - 1 - y;
            default -> y * ROW + x;
        };
    }

    static int column(long place) {
        return (int) (place % ROW);
    }

    static int row(long place) {
        return (int) (place / ROW);
    }
}
