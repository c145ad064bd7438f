package ebblight.core.motion;

/**
 * The linear model that turns ten feature maps into four logits, one a {@link Kind}: scaled feature = (feature − mean)
 * / deviation, clipped to ±4; logit = Σ weight · scaled feature + bias.
 *
 * <p>A multinomial logistic fit on three hand-drawn masks of real clips and four filmed weathers of the demo's coast, held to
 * the weights of the prototype, which knew ten masks (tools/region-weights; docs/decisions). docs/accuracy.md says how
 * much of the picture it tells rightly.
 */
public final class RegionModel {

    /** Number of feature maps. */
    static final int FEATURES = 10;

    static final int KINDS = 4;

    private final double[] mean;
    private final double[] deviation;
    private final double[][] weights;

    private RegionModel(double[] mean, double[] deviation, double[][] weights) {
        this.mean = mean;
        this.deviation = deviation;
        this.weights = weights;
    }

    /**
     * A model of one's own.
     *
     * @param mean of each feature
     * @param deviation of each feature, above 0
     * @param weights a row of four a feature, then a row of biases
     */
    public static RegionModel of(double[] mean, double[] deviation, double[][] weights) {
        if (mean.length != FEATURES || deviation.length != FEATURES || weights.length != FEATURES + 1) {
            throw new IllegalArgumentException("a region model has " + FEATURES + " features and a row of biases");
        }
        return new RegionModel(mean.clone(), deviation.clone(), weights.clone());
    }

    /** The model that comes with the program. */
    public static RegionModel standard() {
        return new RegionModel(
                new double[] {
                    -1.05275, 1.9069, -0.48118, -0.30035, 0.4658, 0.59823, 0.18209, 0.45603, -0.01148, -0.02035
                },
                new double[] {0.5685, 1.49271, 0.4289, 0.39964, 0.39694, 0.38441, 0.78026, 0.3081, 0.09499, 0.12244},
                new double[][] {
                    {-0.55680, -0.65817, 0.02729, 1.18768},
                    {0.06700, -0.91964, 0.57983, 0.27281},
                    {0.00795, -0.15397, -0.13704, 0.28307},
                    {0.22238, -0.58710, 0.19304, 0.17168},
                    {0.52156, -0.37791, -0.55322, 0.40956},
                    {0.21667, 0.21927, -0.05420, -0.38176},
                    {-0.60722, 0.22311, 0.38486, -0.00076},
                    {0.44862, -0.61197, 0.71558, -0.55222},
                    {-0.24828, 0.30323, -0.39126, 0.33632},
                    {0.08375, 0.15043, 0.69231, -0.92649},
                    {0.39484, -0.41968, -0.09411, 0.11895}
                });
    }

    /** A row of four a feature, then the biases. */
    double[][] weights() {
        double[][] copy = new double[weights.length][];
        for (int r = 0; r < copy.length; r++) {
            copy[r] = weights[r].clone();
        }
        return copy;
    }

    /** Feature {@code k} in units of its own spread, not clipped. */
    double scaled(int k, double value) {
        return (value - mean[k]) / deviation[k];
    }

    /** Logits of one pixel into {@code logits[kind][pixel]}. */
    void logits(float[][] features, int pixel, float[][] logits) {
        for (int c = 0; c < KINDS; c++) {
            double sum = weights[FEATURES][c];
            for (int k = 0; k < FEATURES; k++) {
                double z = scaled(k, features[k][pixel]);
                sum += Math.max(-4, Math.min(4, z)) * weights[k][c];
            }
            logits[c][pixel] = (float) sum;
        }
    }
}
