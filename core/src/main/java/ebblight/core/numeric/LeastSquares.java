package ebblight.core.numeric;

/** Small systems of linear equations and straight lines through points. */
public final class LeastSquares {

    private LeastSquares() {}

    /**
     * Solves {@code a x = b} by elimination with row exchange; {@code a} and {@code b} are used up.
     *
     * @return x, or all zeros where the system has no single solution
     */
    public static double[] solve(double[][] a, double[] b) {
        int n = b.length;
        for (int k = 0; k < n; k++) {
            int best = k;
            for (int r = k + 1; r < n; r++) {
                if (Math.abs(a[r][k]) > Math.abs(a[best][k])) {
                    best = r;
                }
            }
            if (!(Math.abs(a[best][k]) > 1e-300)) {
                return new double[n];
            }
            double[] row = a[k];
            a[k] = a[best];
            a[best] = row;
            double value = b[k];
            b[k] = b[best];
            b[best] = value;
            for (int r = k + 1; r < n; r++) {
                double factor = a[r][k] / a[k][k];
                for (int c = k; c < n; c++) {
                    a[r][c] -= factor * a[k][c];
                }
                b[r] -= factor * b[k];
            }
        }
        double[] x = new double[n];
        for (int k = n - 1; k >= 0; k--) {
            double sum = b[k];
            for (int c = k + 1; c < n; c++) {
                sum -= a[k][c] * x[c];
            }
            x[k] = sum / a[k][k];
        }
        return x;
    }

    /** Slope of the straight line of least squares through the points; 0 when all x are the same. */
    public static double slope(double[] x, double[] y) {
        double mx = 0;
        double my = 0;
        for (int i = 0; i < x.length; i++) {
            mx += x[i];
            my += y[i];
        }
        mx /= x.length;
        my /= x.length;
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < x.length; i++) {
            sxx += (x[i] - mx) * (x[i] - mx);
            sxy += (x[i] - mx) * (y[i] - my);
        }
        return sxx > 0 ? sxy / sxx : 0;
    }
}
