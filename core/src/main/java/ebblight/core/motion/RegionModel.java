package ebblight.core.motion;

/**
 * The linear model that turns eleven feature maps into four logits, one a {@link Kind}: scaled feature = (feature − mean)
 * / deviation, clipped to ±4; logit = Σ weight · scaled feature + bias.
 *
 * <p>A multinomial logistic fit on three hand-drawn masks of real clips, four filmed weathers of the demo's coast, a made fall and a bough, held to
 * the weights of the prototype, which knew ten masks (tools/region-weights; docs/decisions). docs/accuracy.md says how
 * much of the picture it tells rightly.
 */
public final class RegionModel {

    /** Number of feature maps. */
    static final int FEATURES = 11;

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
                    -1.05275, 1.9069, -0.48118, -0.30035, 0.4658, 0.59823, 0.18209, 0.45603, -0.01148, -0.02035, 0.55
                },
                new double[] {0.5685, 1.49271, 0.4289, 0.39964, 0.39694, 0.38441, 0.78026, 0.3081, 0.09499, 0.12244, 0.2
                },
                new double[][] {
                    {-0.59548, -0.74505, 0.10836, 1.23217},
                    {0.09715, -1.00145, 0.64741, 0.25689},
                    {0.02017, -0.09947, -0.28843, 0.36773},
                    {0.34612, -0.64403, 0.11816, 0.17974},
                    {0.55619, -0.44050, -0.55144, 0.43575},
                    {0.29840, 0.18043, 0.00420, -0.48304},
                    {-0.69195, 0.25607, 0.35433, 0.08154},
                    {0.51563, -0.66244, 0.53553, -0.38872},
                    {-0.20409, 0.26050, -0.41663, 0.36023},
                    {0.14585, 0.07170, 0.80976, -1.02730},
                    {0.02567, 0.01397, 0.24971, -0.28934},
                    {0.42224, -0.51692, -0.07499, 0.16967}
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
