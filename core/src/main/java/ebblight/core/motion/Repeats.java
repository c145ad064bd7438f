package ebblight.core.motion;

/**
 * Whether a clip shows the same seconds over and over, or runs back to its start: such clips fool every statistic of
 * long times.
 *
 * @param periodSeconds time after which the frames come again; 0 when they do not
 */
record Repeats(double periodSeconds) {

    private static final double SAME = 0.95;
    private static final int PIXELS = 2000;

    boolean found() {
        return periodSeconds > 0;
    }

    static Repeats of(LuminanceFrames frames, float[] moving) {
        int[] at = PixelSeries.thinned(moving);
        int n = frames.count();
        if (at.length < 50 || n < 8) {
            return new Repeats(0);
        }
        int step = Math.max(1, at.length / PIXELS);
        int used = at.length / step;
        double[][] change = new double[n][used];
        for (int k = 0; k < used; k++) {
            double mean = 0;
            for (int i = 0; i < n; i++) {
                change[i][k] = frames.frame(i)[at[k * step]];
                mean += change[i][k] / n;
            }
            for (int i = 0; i < n; i++) {
                change[i][k] -= mean;
            }
        }
        // Only lags at which the clip has already forgotten itself once can be a return.
        boolean forgotten = false;
        for (int lag = 1; lag < n; lag++) {
            double likeness = likeness(change, lag);
            forgotten |= likeness < 0.5;
            boolean enough = n - lag >= Math.max(3, n / 20);
            if (forgotten && likeness > SAME && enough) {
                return new Repeats(lag * frames.spacingSeconds());
            }
        }
        double ends = correlation(change[0], change[n - 1]);
        double neighbours = likeness(change, 1);
        if (forgotten && neighbours > 0.5 && ends > Math.max(0.7, neighbours * neighbours)) {
            return new Repeats(frames.lengthSeconds());
        }
        return new Repeats(0);
    }

    /** Mean correlation of the frames {@code lag} apart. */
    private static double likeness(double[][] change, int lag) {
        int pairs = change.length - lag;
        int step = Math.max(1, pairs / 12);
        double sum = 0;
        int count = 0;
        for (int i = 0; i < pairs; i += step) {
            sum += correlation(change[i], change[i + lag]);
            count++;
        }
        return sum / count;
    }

    private static double correlation(double[] a, double[] b) {
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int k = 0; k < a.length; k++) {
            ab += a[k] * b[k];
            aa += a[k] * a[k];
            bb += b[k] * b[k];
        }
        return ab / Math.sqrt(aa * bb + 1e-300);
    }
}
