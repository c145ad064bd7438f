package ebblight.core.motion;

import ebblight.core.numeric.Work;
import java.util.Arrays;

/**
 * A drawn coast of 64 × 48 px: clouds that drift to the right over the upper third, water in the middle whose texture
 * fades as exp(−s/τ), textured rock below. A model that goes by the row alone tells the three apart.
 */
final class Coast {

    static final int WIDTH = 64;
    static final int HEIGHT = 48;
    static final int FRAMES = 60;
    static final double SPACING = 0.25;
    static final double MEMORY = 0.75;

    /** Pixels a second, to the right. */
    static final double DRIFT = 1.5;

    /** Mean light of the water, and its deviation at once. */
    static final double WATER = 0.3;

    static final double DEVIATION = 0.04;

    private Coast() {}

    /** By row: above a third clouds, below two thirds rock. */
    static RegionModel model() {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[7][Kind.DRIFTING.column()] = -6;
        weights[7][Kind.FIXED.column()] = 6;
        weights[RegionModel.FEATURES][Kind.FLOWING.column()] = 10;
        weights[RegionModel.FEATURES][Kind.SWAYING.column()] = -99;
        return byRow(weights);
    }

    /** A model that goes by feature 7, the row, which is 0 in the middle of the picture. */
    static RegionModel byRow(double[][] weights) {
        double[] mean = new double[RegionModel.FEATURES];
        double[] deviation = new double[RegionModel.FEATURES];
        Arrays.fill(deviation, 1);
        mean[7] = 0.5;
        deviation[7] = 0.1;
        return RegionModel.of(mean, deviation, weights);
    }

    static Clip clip() {
        double[][] water = water(FRAMES);
        double[] clouds = Plain.noise(4 * WIDTH, HEIGHT, 2.5, 21);
        double[] rock = texture(22);
        return Plain.clip(WIDTH, HEIGHT, FRAMES, SPACING, (x, y, t) -> {
            int p = y * WIDTH + x;
            if (y < HEIGHT / 3) {
                double at = x - DRIFT * t + 2 * WIDTH;
                return Plain.between(clouds, 4 * WIDTH, HEIGHT, at, y);
            }
            return y < 2 * HEIGHT / 3
                    ? WATER + DEVIATION * water[(int) Math.rint(t / SPACING)][p]
                    : Math.max(0.02, 0.25 + 0.08 * rock[p]);
        });
    }

    static ViewSurvey survey() {
        return ViewSurvey.of(clip(), Strokes.none(), model(), Work.alone());
    }

    /** Smooth textures of deviation 1, each {@code exp(−spacing/τ)} like the one before. */
    static double[][] water(int count) {
        double keep = Math.exp(-SPACING / MEMORY);
        double[][] water = new double[count][];
        for (int i = 0; i < count; i++) {
            double[] fresh = texture(300 + i);
            water[i] = fresh;
            for (int p = 0; i > 0 && p < fresh.length; p++) {
                fresh[p] = keep * water[i - 1][p] + Math.sqrt(1 - keep * keep) * fresh[p];
            }
        }
        return water;
    }

    /** A smooth texture with mean 0 and deviation 1. */
    static double[] texture(long seed) {
        double[] texture = Plain.noise(WIDTH, HEIGHT, 1, seed);
        double[] moments = moments(Plain.narrow(texture), 0, HEIGHT);
        for (int p = 0; p < texture.length; p++) {
            texture[p] = (texture[p] - moments[0]) / moments[1];
        }
        return texture;
    }

    /** Mean and deviation over the rows {@code from} to before {@code to}. */
    static double[] moments(float[] plane, int from, int to) {
        double sum = 0;
        double squares = 0;
        double count = (to - from) * WIDTH;
        for (int p = from * WIDTH; p < to * WIDTH; p++) {
            sum += plane[p];
            squares += plane[p] * (double) plane[p];
        }
        return new double[] {sum / count, Math.sqrt(squares / count - sum / count * sum / count)};
    }
}
