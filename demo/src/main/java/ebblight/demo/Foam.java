package ebblight.demo;

import ebblight.core.numeric.Powers;

/** White water where waves run up rock: a lace that tears and closes in seconds, more of it as the water rises. */
final class Foam {

    static final int SIDE = 256;
    private static final double TILE_METRES = 5.2;
    /** Water deeper than this carries no foam. */
    static final float DEEPEST_METRES = 0.75f;

    private static final float[] COLOUR = {0.34f, 0.315f, 0.335f};

    private static final DriftingField.Part PART = new DriftingField.Part() {
        private static final double STEP = TILE_METRES / SIDE;

        @Override
        public double amplitude(double kx, double ky) {
            double k = Math.sqrt(kx * kx + ky * ky) / STEP;
            return k < 2 || k > 70 ? 0 : Powers.pow(k, -1.25) * StrictMath.exp(-(k / 40) * (k / 40));
        }

        @Override
        public double lifetimeSeconds(double kx, double ky) {
            double k = Math.sqrt(kx * kx + ky * ky) / STEP;
            return Math.max(0.3, 1.0 * Powers.pow(6 / k, 2.0 / 3));
        }
    };

    private Foam() {}

    static DriftingField field(long seed) {
        return new DriftingField(SIDE, SIDE, PART, 3.0, -5.0, seed);
    }

    /**
     * Covers {@code rgb[at…]} with foam.
     *
     * @param x of the water in metres
     * @param y of the water in metres
     * @param depth of still water there in metres, less than {@link #DEEPEST_METRES}
     * @param level of the water over still water, metres
     */
    static void cover(DriftingField.State lace, double x, double y, float depth, float level, float[] rgb, int at) {
        double column = x * SIDE / TILE_METRES;
        double row = y * SIDE / TILE_METRES;
        float first = sample(lace.layers, 0, column, row);
        float second = sample(lace.layers, 1, column * 0.5, row * 0.5);
        float finer = sample(lace.layers, 1, column * 2.3 + 40, row * 2.3);
        float thread = 1 - Math.min(1, Math.abs(first) * 1.15f);
        float lacing = 0.62f * thread + 0.38f * (1 - Math.min(1, Math.abs(finer) * 1.1f));
        float near = 1 - depth / DEEPEST_METRES;
        float amount = 1.0f * near * near + 3.4f * level * near - 0.42f + 0.16f * second;
        float share = smooth(amount + 0.9f * (lacing - 0.35f) * (near + amount)) * (0.55f + 0.45f * lacing);
        for (int c = 0; c < 3; c++) {
            rgb[at + c] += 0.92f * share * (COLOUR[c] - rgb[at + c]);
        }
    }

    private static float smooth(float x) {
        float t = Math.max(0, Math.min(1, x));
        return t * t * (3 - 2 * t);
    }

    private static float sample(float[] layers, int layer, double column, double row) {
        double xf = Math.floor(column);
        double yf = Math.floor(row);
        float fx = (float) (column - xf);
        float fy = (float) (row - yf);
        int mask = SIDE - 1;
        int x0 = (int) xf & mask;
        int x1 = x0 + 1 & mask;
        int a = ((int) yf & mask) * SIDE;
        int b = ((int) yf + 1 & mask) * SIDE;
        float top = layers[2 * (a + x0) + layer] * (1 - fx) + layers[2 * (a + x1) + layer] * fx;
        float bottom = layers[2 * (b + x0) + layer] * (1 - fx) + layers[2 * (b + x1) + layer] * fx;
        return top + fy * (bottom - top);
    }
}
