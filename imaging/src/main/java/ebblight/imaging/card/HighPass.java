package ebblight.imaging.card;

/** How places differ from what is round them, where both are known. */
final class HighPass {

    private HighPass() {}

    /**
     * Each value less the mean of the known ones within {@code round} places, held to ±{@code most}; 0 where unknown.
     */
    static float[] of(double[] value, boolean[] known, int w, int h, int round, double most) {
        double[] given = new double[value.length];
        double[] count = new double[value.length];
        for (int i = 0; i < value.length; i++) {
            given[i] = known[i] ? value[i] : 0;
            count[i] = known[i] ? 1 : 0;
        }
        double[] sums = boxSums(given, w, h, round);
        double[] counts = boxSums(count, w, h, round);
        float[] out = new float[value.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = known[i] ? (float) Math.max(-most, Math.min(most, value[i] - sums[i] / counts[i])) : 0;
        }
        return out;
    }

    /** Sums over squares of 2·{@code round} + 1 places, cut at the edges. */
    static double[] boxSums(double[] value, int w, int h, int round) {
        double[] rows = new double[value.length];
        double[] run = new double[Math.max(w, h) + 1];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                run[x + 1] = run[x] + value[y * w + x];
            }
            for (int x = 0; x < w; x++) {
                rows[y * w + x] = run[Math.min(w, x + round + 1)] - run[Math.max(0, x - round)];
            }
        }
        double[] out = new double[value.length];
        for (int x = 0; x < w; x++) {
            for (int y = 0; y < h; y++) {
                run[y + 1] = run[y] + rows[y * w + x];
            }
            for (int y = 0; y < h; y++) {
                out[y * w + x] = run[Math.min(h, y + round + 1)] - run[Math.max(0, y - round)];
            }
        }
        return out;
    }
}
