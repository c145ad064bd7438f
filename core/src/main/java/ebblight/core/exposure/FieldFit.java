package ebblight.core.exposure;

import ebblight.core.numeric.Quantiles;

/**
 * A value over the field of a picture: level + slope · (radius² − its mean), by least squares that gives outliers less
 * weight (Huber 1964, k = 1.5); errors by leaving out one block of the picture after the other (jackknife, from
 * memory).
 *
 * @param level at the mean radius²
 * @param levelSigma one standard deviation
 * @param slope difference between corner and middle
 * @param slopeSigma one standard deviation
 * @param middle at radius 0
 * @param middleSigma one standard deviation
 */
record FieldFit(double level, double levelSigma, double slope, double slopeSigma, double middle, double middleSigma) {

    private static final double HUBER = 1.5;
    private static final int ROUNDS = 12;

    static FieldFit of(float[] value, float[] radius, int[] block) {
        double meanSquare = 0;
        int blocks = 0;
        for (int i = 0; i < value.length; i++) {
            meanSquare += radius[i] * radius[i] / value.length;
            blocks = Math.max(blocks, block[i] + 1);
        }
        double[] x = new double[value.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = radius[i] * radius[i] - meanSquare;
        }
        double[] all = line(value, x, block, -1, true);
        double[][] without = new double[blocks][];
        int used = 0;
        for (int k = 0; k < blocks; k++) {
            if (occupied(block, k)) {
                without[used++] = line(value, x, block, k, true);
            }
        }
        double shift = -meanSquare;
        return new FieldFit(
                all[0],
                sigma(without, used, 1, 0),
                all[1],
                sigma(without, used, 0, 1),
                all[0] + shift * all[1],
                sigma(without, used, 1, shift));
    }

    /** The level alone, where the field is known to be even. */
    static double level(float[] value, int[] block) {
        return line(value, new double[value.length], block, -1, false)[0];
    }

    private static boolean occupied(int[] block, int k) {
        for (int each : block) {
            if (each == k) {
                return true;
            }
        }
        return false;
    }

    /** Error of {@code a · level + b · slope} from the estimates that each leave out a block. */
    private static double sigma(double[][] estimates, int n, double a, double b) {
        if (n < 3) {
            return 0.1; // all in one or two blocks: nothing tells how they err together
        }
        double mean = 0;
        for (int k = 0; k < n; k++) {
            mean += (a * estimates[k][0] + b * estimates[k][1]) / n;
        }
        double sum = 0;
        for (int k = 0; k < n; k++) {
            double off = a * estimates[k][0] + b * estimates[k][1] - mean;
            sum += off * off;
        }
        return Math.sqrt(sum * (n - 1) / n);
    }

    private static double[] line(float[] y, double[] x, int[] block, int leftOut, boolean sloped) {
        double[] used = new double[y.length];
        int n = 0;
        for (int i = 0; i < y.length; i++) {
            if (block[i] != leftOut) {
                used[n++] = y[i];
            }
        }
        double level = n == 0 ? 0 : Quantiles.median(used, n);
        double slope = 0;
        double[] sizes = new double[y.length];
        for (int round = 0; round < ROUNDS; round++) {
            n = 0;
            for (int i = 0; i < y.length; i++) {
                if (block[i] != leftOut) {
                    sizes[n++] = Math.abs(y[i] - level - slope * x[i]);
                }
            }
            double limit = HUBER * Math.max(1e-6, (n == 0 ? 0 : Quantiles.median(sizes, n)) / 0.6745);
            double sw = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            for (int i = 0; i < y.length; i++) {
                if (block[i] != leftOut) {
                    double off = Math.abs(y[i] - level - slope * x[i]);
                    double w = off <= limit ? 1 : limit / off;
                    sw += w;
                    sx += w * x[i];
                    sy += w * y[i];
                    sxx += w * x[i] * x[i];
                    sxy += w * x[i] * y[i];
                }
            }
            double spread = sw * sxx - sx * sx;
            slope = sloped && spread > 1e-12 ? (sw * sxy - sx * sy) / spread : 0;
            level = sw > 0 ? (sy - slope * sx) / sw : level;
        }
        return new double[] {level, slope};
    }
}
