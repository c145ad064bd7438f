package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;

/**
 * Sensor noise of one frame: variance = {@code slope} · luminance + {@code floor}, both 0 or more, in squared linear
 * luminance; docs/accuracy.md says how near it comes.
 *
 * <p>Measured on the spatially white part of the differences of neighbouring frames, in blocks of 16 pixels, as the
 * lowest tenth in eight classes of luminance: texture that moves only adds, so the calmest blocks show the noise. What
 * chance alone makes of a lowest tenth is taken out.
 */
record NoiseModel(double slope, double floor) {

    private static final int BLOCK = 16;
    private static final int CLASSES = 8;
    private static final int PAIRS = 24;
    private static final double CALM_QUANTILE = 0.1;

    /** Standard deviations from the middle of a normal distribution to its lowest tenth. */
    private static final double LOWEST_TENTH = 1.2816;

    /**
     * Neighbours share noise through the filter: Σρ² of [1 −4 6 −4 1]/6 in both directions, 1.944², so that a block
     * holds fewer independent values than pixels.
     */
    private static final double CORRELATED = 3.78;

    private static final int ROUNDS = 3;

    /** A class whose calm blocks lie this share above the line counts half: chance moves them by less. */
    private static final double NOT_CALM = 0.1;

    private static final double SMALLEST = 1e-9;

    /** Variance of the noise at a luminance. */
    double at(double luminance) {
        return slope * Math.max(luminance, 0) + floor;
    }

    static NoiseModel of(LuminanceFrames frames, float[] mean) {
        int columns = frames.width() / BLOCK;
        int rows = frames.height() / BLOCK;
        if (frames.count() < 2 || columns * rows < 2 * CLASSES) {
            return new NoiseModel(0, SMALLEST);
        }
        double[] blockVariance = new double[columns * rows];
        double[] blockMean = new double[columns * rows];
        int step = Math.max(1, frames.count() / PAIRS);
        int pairs = 0;
        for (int i = 0; i + 1 < frames.count(); i += step) {
            addWhitePart(frames.frame(i), frames.frame(i + 1), frames.width(), columns, rows, blockVariance);
            pairs++;
        }
        for (int b = 0; b < blockVariance.length; b++) {
            blockVariance[b] /= 2.0 * pairs * BLOCK * BLOCK;
            double sum = 0;
            int top = b / columns * BLOCK;
            int left = b % columns * BLOCK;
            for (int y = top; y < top + BLOCK; y++) {
                for (int x = left; x < left + BLOCK; x++) {
                    sum += mean[y * frames.width() + x];
                }
            }
            blockMean[b] = sum / (BLOCK * BLOCK);
        }
        return fit(blockMean, blockVariance, calm(pairs));
    }

    /** Adds the squares of the white part of the difference. */
    private static void addWhitePart(
            float[] first, float[] second, int width, int columns, int rows, double[] blockVariance) {
        int bottom = rows * BLOCK - 1;
        int right = columns * BLOCK - 1;
        for (int y = 1; y < bottom; y++) {
            for (int x = 1; x < right; x++) {
                int p = y * width + x;
                double v = WhitePart.at(second, p, width) - WhitePart.at(first, p, width);
                blockVariance[y / BLOCK * columns + x / BLOCK] += v * v;
            }
        }
    }

    /** The lowest tenth of measured variances of blocks that hold noise alone, over the true variance. */
    private static double calm(int pairs) {
        return 1 - LOWEST_TENTH * Math.sqrt(2 * CORRELATED / (pairs * (double) BLOCK * BLOCK));
    }

    /**
     * A straight line through the calm values of the classes; {@code calm} is what they are of the true ones. Calm is
     * judged against the line itself, which takes a few rounds: the lowest values of a class are else those of its
     * darkest blocks. A class that stays above the line has nothing calm in it and counts less.
     */
    private static NoiseModel fit(double[] mean, double[] variance, double calm) {
        double[] sorted = mean.clone();
        double[] limits = new double[CLASSES + 1];
        for (int k = 0; k <= CLASSES; k++) {
            limits[k] = Quantiles.quantile(sorted, sorted.length, (double) k / CLASSES);
        }
        NoiseModel model = new NoiseModel(0, 1);
        double[] middles = new double[CLASSES];
        double[] values = new double[CLASSES];
        double[] weights = new double[CLASSES];
        double[] means = new double[mean.length];
        double[] ratios = new double[mean.length];
        for (int round = 0; round <= ROUNDS; round++) {
            for (int k = 0; k < CLASSES; k++) {
                int count = 0;
                for (int b = 0; b < mean.length; b++) {
                    if (mean[b] >= limits[k] && mean[b] <= limits[k + 1]) {
                        means[count] = mean[b];
                        ratios[count++] = variance[b] / Math.max(model.at(mean[b]), SMALLEST);
                    }
                }
                weights[k] = 0;
                if (count > 4) {
                    middles[k] = Quantiles.median(means, count);
                    double ratio = Quantiles.quantile(ratios, count, CALM_QUANTILE) / calm;
                    values[k] = Math.max(ratio * Math.max(model.at(middles[k]), SMALLEST), SMALLEST);
                    double above = round == 0 ? 0 : Math.max(0, ratio - 1) / NOT_CALM;
                    weights[k] = 1 / (values[k] * values[k] * (1 + above * above));
                }
            }
            model = line(middles, values, weights);
        }
        return model;
    }

    /** A straight line by weighted least squares, neither term below 0. */
    private static NoiseModel line(double[] x, double[] y, double[] weight) {
        double s = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (int k = 0; k < x.length; k++) {
            double w = weight[k];
            s += w;
            sx += w * x[k];
            sy += w * y[k];
            sxx += w * x[k] * x[k];
            sxy += w * x[k] * y[k];
        }
        if (s == 0) {
            return new NoiseModel(0, SMALLEST);
        }
        double determinant = s * sxx - sx * sx;
        double slope = determinant > 0 ? (s * sxy - sx * sy) / determinant : 0;
        double floor = (sy - slope * sx) / s;
        if (slope < 0) {
            return new NoiseModel(0, sy / s);
        }
        return floor < 0 ? new NoiseModel(sxy / sxx, 0) : new NoiseModel(slope, floor);
    }
}
