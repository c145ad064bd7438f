package ebblight.demo;

import ebblight.core.numeric.RgbPicture;

/**
 * A sky whose clouds travel evenly across the whole picture, at a speed known in pixels, while they slowly change as
 * those of the evening do: the truth for measured drift.
 */
public final class DriftingClouds {

    private static final float[] CLEAR = {0.16f, 0.22f, 0.34f};
    private static final float[] CLOUD = {0.62f, 0.56f, 0.54f};

    private final int width;
    private final int height;
    private final DriftingField field;
    private final DriftingField.State state;

    /**
     * A sky of its own.
     *
     * @param width in pixels, 1 to 1024
     * @param height in pixels, 1 to 256
     * @param rightPixelsPerSecond drift to the right
     * @param downPixelsPerSecond drift downwards
     */
    public DriftingClouds(int width, int height, double rightPixelsPerSecond, double downPixelsPerSecond, long seed) {
        if (width < 1 || width > Clouds.COLUMNS || height < 1 || height > Clouds.ROWS) {
            throw new IllegalArgumentException("the sky must be 1 × 1 to " + Clouds.COLUMNS + " × " + Clouds.ROWS
                    + " pixels, was " + width + " × " + height);
        }
        this.width = width;
        this.height = height;
        this.field = Clouds.field(rightPixelsPerSecond, downPixelsPerSecond, seed);
        this.state = field.state();
    }

    /** The sky at an instant in scene-linear light without noise; one thread at a time. */
    public RgbPicture frame(double timeSeconds) {
        field.at(timeSeconds, state);
        RgbPicture picture = RgbPicture.black(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float cover = SkyPatch.smooth((state.layers[2 * (y * Clouds.COLUMNS + x)] + 0.52f) * 0.60f);
                for (int c = 0; c < 3; c++) {
                    picture.plane(c)[y * width + x] = CLEAR[c] + cover * (CLOUD[c] - CLEAR[c]);
                }
            }
        }
        return picture;
    }
}
