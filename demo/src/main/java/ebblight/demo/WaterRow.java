package ebblight.demo;

/** What one row of water looks at, pixel by pixel; work arrays of one thread. */
final class WaterRow {

    /** Metres to the right of the camera. */
    final float[] across;
    /** Direction cosines of the mirrored ray to the right and up. */
    final float[] right;

    final float[] up;
    /** Standard deviation of the mirrored ray's direction over the facets of the pixel. */
    final float[] blur;
    /** Share of light that is mirrored. */
    final float[] share;
    /** Height of the longest waves, metres. */
    final float[] level;
    /** Light that is mirrored: red, green, blue in turn. */
    final float[] seen;
    /** Light of the row: red, green, blue in turn. */
    final float[] rgb;

    final float[] slope = new float[2];

    WaterRow(int width) {
        across = new float[width];
        right = new float[width];
        up = new float[width];
        blur = new float[width];
        share = new float[width];
        level = new float[width];
        seen = new float[3 * width];
        rgb = new float[3 * width];
    }
}
