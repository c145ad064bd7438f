package ebblight.demo;

import java.util.Arrays;

/**
 * The sky as water sees it: light by direction over the half sphere in front of the camera, and the same blurred more
 * and more, for facets too small to see one by one.
 */
final class Mirror {

    static final int COLUMNS = 128;
    static final int ROWS = 64;
    static final double[] BLUR = {0, 0.03, 0.07, 0.15, 0.32};
    private static final int TAPS = 24;

    private final SkyPatch sky = new SkyPatch(COLUMNS * ROWS);
    private final double[][] upWeights = new double[BLUR.length][];
    private final double[][] rightWeights = new double[BLUR.length][];

    /** One instant; belongs to one thread. By blur: red, green, blue in turn, row by row from the horizon up. */
    static final class State {
        final float[][] light = new float[BLUR.length][3 * COLUMNS * ROWS];
        final float[] half = new float[3 * COLUMNS * ROWS];
    }

    Mirror() {
        double[] rgb = new double[3];
        for (int j = 0; j < ROWS; j++) {
            for (int i = 0; i < COLUMNS; i++) {
                sky.place(j * COLUMNS + i, right(i), up(j), rgb);
            }
        }
        for (int level = 1; level < BLUR.length; level++) {
            upWeights[level] = upWeights(BLUR[level]);
            rightWeights[level] = rightWeights(BLUR[level] * 0.6);
        }
    }

    private static double right(int i) {
        return (i + 0.5) * 2 / COLUMNS - 1;
    }

    /** Rows lie closer near the horizon, where the sky changes fastest. */
    private static double up(int j) {
        double s = (j + 0.5) / ROWS;
        return s * s;
    }

    private static double[] upWeights(double sigma) {
        double[] weights = new double[ROWS * ROWS];
        for (int j = 0; j < ROWS; j++) {
            double sum = 0;
            for (int q = 0; q < ROWS; q++) {
                double size = (q + 0.5) / ROWS;
                // light that would come from below the horizon is taken from as far above it
                double w = size * (bell((up(q) - up(j)) / sigma) + bell((up(q) + up(j)) / sigma));
                weights[j * ROWS + q] = w;
                sum += w;
            }
            for (int q = 0; q < ROWS; q++) {
                weights[j * ROWS + q] /= sum;
            }
        }
        return weights;
    }

    private static double bell(double x) {
        return Math.abs(x) > 3 ? 0 : StrictMath.exp(-x * x / 2);
    }

    private static double[] rightWeights(double sigma) {
        double[] weights = new double[2 * TAPS + 1];
        double sum = 0;
        for (int i = -TAPS; i <= TAPS; i++) {
            weights[i + TAPS] = bell(i * 2.0 / COLUMNS / sigma);
            sum += weights[i + TAPS];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    void at(DriftingField.State clouds, State state) {
        sky.light(clouds, 0, sky.size(), state.light[0]);
        for (int level = 1; level < BLUR.length; level++) {
            blurUp(state.light[0], state.half, upWeights[level]);
            blurRight(state.half, state.light[level], rightWeights[level]);
        }
    }

    private static void blurUp(float[] from, float[] to, double[] weights) {
        int row = 3 * COLUMNS;
        Arrays.fill(to, 0);
        for (int j = 0; j < ROWS; j++) {
            for (int q = 0; q < ROWS; q++) {
                float w = (float) weights[j * ROWS + q];
                if (w < 1e-6f) {
                    continue;
                }
                for (int i = 0; i < row; i++) {
                    to[j * row + i] += w * from[q * row + i];
                }
            }
        }
    }

    private static void blurRight(float[] from, float[] to, double[] weights) {
        int row = 3 * COLUMNS;
        Arrays.fill(to, 0);
        for (int tap = -TAPS; tap <= TAPS; tap++) {
            float w = (float) weights[tap + TAPS];
            if (w < 1e-6f) {
                continue;
            }
            for (int j = 0; j < ROWS; j++) {
                for (int i = 0; i < COLUMNS; i++) {
                    int q = Math.max(0, Math.min(COLUMNS - 1, i + tap));
                    int a = j * row + 3 * i;
                    int b = j * row + 3 * q;
                    to[a] += w * from[b];
                    to[a + 1] += w * from[b + 1];
                    to[a + 2] += w * from[b + 2];
                }
            }
        }
    }

    /** Place between the blurs for a blur of {@code sigma}. */
    static double level(double sigma) {
        for (int i = 1; i < BLUR.length; i++) {
            if (sigma < BLUR[i]) {
                return i - 1 + (sigma - BLUR[i - 1]) / (BLUR[i] - BLUR[i - 1]);
            }
        }
        return BLUR.length - 1.001;
    }
}
