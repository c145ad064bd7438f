package ebblight.core.numeric;

import java.util.SplittableRandom;

/** Planes of noise, and the mean of a plane weighted sample by sample: the plain twin of every fast blur. */
final class Planes {

    private Planes() {}

    static float[] noise(int width, int height, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        float[] plane = new float[width * height];
        for (int p = 0; p < plane.length; p++) {
            plane[p] = (float) dice.nextDouble();
        }
        return plane;
    }

    /** Mean by the weights {@code kernel(dx)·kernel(dy)}, mirrored at the borders without repeating the edge. */
    static double weighted(float[] plane, int width, int height, int x, int y, double[] kernel) {
        int radius = kernel.length / 2;
        double sum = 0;
        double weights = 0;
        for (int dy = -radius; dy <= radius; dy++) {
            for (int dx = -radius; dx <= radius; dx++) {
                double weight = kernel[dx + radius] * kernel[dy + radius];
                sum += weight * plane[reflected(y + dy, height) * width + reflected(x + dx, width)];
                weights += weight;
            }
        }
        return sum / weights;
    }

    /** … 2 1 0 1 2 …, step by step. */
    static int reflected(int i, int n) {
        int at = i;
        while (n > 1 && (at < 0 || at >= n)) {
            at = at < 0 ? -at : 2 * (n - 1) - at;
        }
        return n == 1 ? 0 : at;
    }
}
