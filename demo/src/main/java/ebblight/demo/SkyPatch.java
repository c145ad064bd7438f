package ebblight.demo;

/**
 * The sky at a fixed set of directions: what does not change is worked out once, so that an instant costs only the
 * look at the clouds.
 */
final class SkyPatch {

    /** Grid steps of the cloud plane for one unit of direction, to the right and up. */
    private static final double COLUMNS_PER_UNIT = 320;

    private static final double ROWS_PER_UNIT = 105;
    /** Perspective of the plane: the larger, the less the clouds' drift differs between low and high. */
    private static final double FLATTEN_RIGHT = 0.7;

    private static final double FLATTEN_UP = 0.10;
    /** The upper layer is squeezed and tilted just so that it drifts through the picture as the lower one does. */
    private static final double UPPER_TILT = -0.4 * Clouds.ROWS_PER_SECOND / Clouds.COLUMNS_PER_SECOND;

    private static final int STRIDE = 9;

    private final int size;
    /** By direction: column and row of the lower layer, column and row of the upper one. */
    private final float[] where;
    /** By direction: clear, lit and shaded colour. */
    private final float[] colours;

    private final float[] veil;

    SkyPatch(int size) {
        this.size = size;
        this.where = new float[4 * size];
        this.colours = new float[STRIDE * size];
        this.veil = new float[size];
    }

    int size() {
        return size;
    }

    private static double column(double right, double up) {
        return right / (up + FLATTEN_RIGHT) * COLUMNS_PER_UNIT;
    }

    private static double row(double up) {
        return StrictMath.log(up + FLATTEN_UP) * ROWS_PER_UNIT;
    }

    /** The way a cloud goes in a second at a place of the picture, in pixels. */
    static View.Drift drift(Lens lens, double x, double y) {
        double step = 1e-4;
        double u = lens.right(x);
        double v = Math.max(lens.up(y), step);
        double[] here = plane(u, v);
        double[] along = plane(u + step, v);
        double[] above = plane(u, v + step);
        double cu = (along[0] - here[0]) / step;
        double cv = (above[0] - here[0]) / step;
        double ru = (along[1] - here[1]) / step;
        double rv = (above[1] - here[1]) / step;
        double determinant = cu * rv - cv * ru;
        double du = (Clouds.COLUMNS_PER_SECOND * rv - Clouds.ROWS_PER_SECOND * cv) / determinant;
        double dv = (Clouds.ROWS_PER_SECOND * cu - Clouds.COLUMNS_PER_SECOND * ru) / determinant;
        return new View.Drift(du * lens.focalPixels(), -dv * lens.focalPixels());
    }

    /** Column and row of the cloud plane that shows at tangents to the right and up. */
    private static double[] plane(double right, double up) {
        double n = 1 / Math.sqrt(1 + right * right + up * up);
        return new double[] {column(right * n, up * n), row(up * n)};
    }

    /** Puts direction {@code i} at the given direction cosines. */
    void place(int i, double right, double up, double[] rgb) {
        double column = column(right, up);
        double row = row(up);
        where[4 * i] = wrap(column, Clouds.COLUMNS);
        where[4 * i + 1] = wrap(row, Clouds.ROWS);
        where[4 * i + 2] = wrap(column + 300, Clouds.COLUMNS);
        where[4 * i + 3] = wrap(1.4 * row + UPPER_TILT * column + 90, Clouds.ROWS);
        EveningSky.clear(right, up, rgb);
        store(i, 0, rgb);
        EveningSky.lit(right, up, rgb);
        store(i, 3, rgb);
        EveningSky.shaded(right, up, rgb);
        store(i, 6, rgb);
        veil[i] = (float) (1 - EveningSky.haze(up));
    }

    private void store(int i, int at, double[] rgb) {
        for (int c = 0; c < 3; c++) {
            colours[STRIDE * i + at + c] = (float) rgb[c];
        }
    }

    private static float wrap(double x, int n) {
        return (float) (x - Math.floor(x / n) * n);
    }

    /** Light of directions {@code from} to {@code to} (exclusive), red, green, blue in turn, from {@code rgb[0]} on. */
    void light(DriftingField.State clouds, int from, int to, float[] rgb) {
        float[] layers = clouds.layers;
        for (int i = from, o = 0; i < to; i++, o += 3) {
            float column = where[4 * i];
            float row = where[4 * i + 1];
            float here = sample(layers, 0, column, row);
            float below = sample(layers, 0, column, row - 9);
            float high = sample(layers, 1, where[4 * i + 2], where[4 * i + 3]);
            float cover = smooth((here + 0.52f) * 0.60f) * veil[i] * 0.94f;
            float open = smooth(0.5f + 0.6f * (here * 0.35f - below + 0.25f));
            float thin = smooth((high - 0.15f) * 0.5f) * veil[i] * 0.55f * (1 - cover);
            int k = STRIDE * i;
            for (int c = 0; c < 3; c++) {
                float clear = colours[k + c];
                float lit = colours[k + 3 + c];
                float shaded = colours[k + 6 + c];
                float cloud = shaded + open * (lit - shaded);
                float wisp = lit * 0.8f + clear * 0.2f;
                rgb[o + c] = clear + cover * (cloud - clear) + thin * (wisp - clear);
            }
        }
    }

    /** From 0 to 1 without a bend. */
    static float smooth(float x) {
        float t = Math.max(0, Math.min(1, x));
        return t * t * (3 - 2 * t);
    }

    private static float sample(float[] layers, int layer, float column, float row) {
        float r = row < 0 ? row + Clouds.ROWS : row;
        int x0 = (int) column;
        int y0 = (int) r;
        float fx = column - x0;
        float fy = r - y0;
        int x1 = x0 + 1 & Clouds.COLUMNS - 1;
        int y1 = y0 + 1 & Clouds.ROWS - 1;
        x0 &= Clouds.COLUMNS - 1;
        y0 &= Clouds.ROWS - 1;
        int a = y0 * Clouds.COLUMNS;
        int b = y1 * Clouds.COLUMNS;
        float top = layers[2 * (a + x0) + layer] * (1 - fx) + layers[2 * (a + x1) + layer] * fx;
        float bottom = layers[2 * (b + x0) + layer] * (1 - fx) + layers[2 * (b + x1) + layer] * fx;
        return top + fy * (bottom - top);
    }
}
