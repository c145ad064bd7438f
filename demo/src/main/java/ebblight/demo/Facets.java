package ebblight.demo;

/**
 * Which facets of rough water a grazing eye sees: those that lean towards it. For slopes s towards the eye, normal
 * with unit standard deviation, seen with a weight of max(0, r + s), the mean is Φ(r) / (r Φ(r) + φ(r)) and the mean
 * square (r Φ(r) + 2 φ(r)) / (r Φ(r) + φ(r)); own derivation from the projected area of a facet.
 */
final class Facets {

    private static final double FROM = -3;
    private static final double TO = 9;
    private static final int STEPS = 480;
    private static final float[] MEAN = new float[STEPS + 2];
    private static final float[] SPREAD = new float[STEPS + 2];

    static {
        for (int i = 0; i < MEAN.length; i++) {
            double r = FROM + (TO - FROM) * i / STEPS;
            double density = StrictMath.exp(-r * r / 2) / Math.sqrt(2 * Math.PI);
            double below = belowUnitNormal(r);
            double weight = r * below + density;
            double mean = below / weight;
            MEAN[i] = (float) mean;
            SPREAD[i] = (float) Math.sqrt(Math.max(0, (r * below + 2 * density) / weight - mean * mean));
        }
    }

    private Facets() {}

    /** Φ by Simpson's rule, error below 1e-10. */
    private static double belowUnitNormal(double r) {
        int n = 2000;
        double from = -9;
        double step = (r - from) / n;
        double sum = 0;
        for (int i = 0; i <= n; i++) {
            double x = from + i * step;
            int weight = i == 0 || i == n ? 1 : 2 + 2 * (i & 1);
            sum += weight * StrictMath.exp(-x * x / 2);
        }
        return sum * step / 3 / Math.sqrt(2 * Math.PI);
    }

    private static float at(float[] table, float r) {
        float x = Math.max(0, Math.min(STEPS, (r - (float) FROM) * (float) (STEPS / (TO - FROM))));
        int i = (int) x;
        return table[i] + (x - i) * (table[i + 1] - table[i]);
    }

    /** Mean slope of the seen facets in standard deviations. */
    static float mean(float r) {
        return at(MEAN, r);
    }

    /** Standard deviation of the seen facets' slopes in standard deviations of all. */
    static float spread(float r) {
        return at(SPREAD, r);
    }
}
