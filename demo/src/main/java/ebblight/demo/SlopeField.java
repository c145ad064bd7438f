package ebblight.demo;

/**
 * The slopes of one cascade at one instant, with their means over ever longer stretches along y: far water is seen at
 * a grazing angle, so that a pixel covers much more of it along the view than across.
 */
final class SlopeField {

    private static final int ROWS_AT_LEAST = 2;

    final int side;
    final int levels;
    /** By level, row by row, slope along x and slope along y in turn. */
    final float[][] slopes;

    SlopeField(int side) {
        this.side = side;
        this.levels = levels(side);
        this.slopes = new float[levels][];
        for (int level = 0; level < levels; level++) {
            slopes[level] = new float[2 * side * (side >> level)];
        }
    }

    /** How many levels a field of that side has. */
    static int levels(int side) {
        return Integer.numberOfTrailingZeros(side / ROWS_AT_LEAST) + 1;
    }

    void set(float[] alongX, float[] alongY) {
        float[] finest = slopes[0];
        for (int i = 0; i < alongX.length; i++) {
            finest[2 * i] = alongX[i];
            finest[2 * i + 1] = alongY[i];
        }
        int row = 2 * side;
        for (int level = 1; level < levels; level++) {
            float[] from = slopes[level - 1];
            float[] to = slopes[level];
            for (int y = 0; y < side >> level; y++) {
                int a = 2 * y * row;
                for (int i = 0; i < row; i++) {
                    to[y * row + i] = (from[a + i] + from[a + row + i]) * 0.5f;
                }
            }
        }
    }
}
