package ebblight.core.motion;

import ebblight.core.numeric.Guided;
import ebblight.core.numeric.Work;

/** How much of every pixel belongs to each {@link Kind}: four shares that sum to 1. */
public final class SoftRegions {

    private static final double GUIDE_RADIUS_OF_480 = 8;
    private static final double GUIDE_EPSILON = 0.03 * 0.03;
    private static final double SMALLEST = 1e-4;

    private final int width;
    private final int height;
    private final float[][] share;

    SoftRegions(int width, int height, float[][] share) {
        this.width = width;
        this.height = height;
        this.share = share;
    }

    /** Shares from logits, their edges taken from {@code median}, then decided more clearly by squaring. */
    static SoftRegions of(float[][] logits, float[] median, int width, int height, Work work) {
        int n = width * height;
        float[][] share = new float[RegionModel.KINDS][n];
        double[] e = new double[RegionModel.KINDS];
        for (int p = 0; p < n; p++) {
            double top = Double.NEGATIVE_INFINITY;
            for (float[] logit : logits) {
                top = Math.max(top, logit[p]);
            }
            double sum = 0;
            for (int c = 0; c < e.length; c++) {
                e[c] = StrictMath.exp(logits[c][p] - top);
                sum += e[c];
            }
            for (int c = 0; c < e.length; c++) {
                share[c][p] = (float) (e[c] / sum);
            }
        }
        float[] guide = new float[n];
        for (int p = 0; p < n; p++) {
            guide[p] = (float) Math.sqrt(Math.max(median[p], 0));
        }
        int radius = Math.max(2, (int) (GUIDE_RADIUS_OF_480 * width / 480));
        work.forEach(share.length, c -> Guided.filter(share[c], guide, share[c], width, height, radius, GUIDE_EPSILON));
        for (int p = 0; p < n; p++) {
            double sum = 0;
            for (int c = 0; c < e.length; c++) {
                double s = Math.max(SMALLEST, Math.min(1, share[c][p]));
                e[c] = s * s;
                sum += e[c];
            }
            for (int c = 0; c < e.length; c++) {
                share[c][p] = (float) (e[c] / sum);
            }
        }
        return new SoftRegions(width, height, share);
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** Share of {@code kind} at every pixel, 0 to 1. */
    public float[] share(Kind kind) {
        return share[kind.column()];
    }

    float[][] all() {
        return share;
    }

    /** The kind with the largest share at every pixel, as its column. */
    byte[] labels() {
        byte[] labels = new byte[width * height];
        for (int p = 0; p < labels.length; p++) {
            int best = 0;
            for (int c = 1; c < share.length; c++) {
                if (share[c][p] > share[best][p]) {
                    best = c;
                }
            }
            labels[p] = (byte) best;
        }
        return labels;
    }

    /** Share of the whole picture that belongs to {@code kind}. */
    double part(Kind kind) {
        double sum = 0;
        for (float s : share(kind)) {
            sum += s;
        }
        return sum / (width * (double) height);
    }

    /** Mean of a plane, each pixel by its share; 0 where nothing has a share. */
    static double meanOver(float[] plane, float[] share) {
        double sum = 0;
        double count = 0;
        for (int p = 0; p < plane.length; p++) {
            sum += plane[p] * (double) share[p];
            count += share[p];
        }
        return count > 0 ? sum / count : 0;
    }
}
