package ebblight.demo;

/** Clouds that drift without changing: a fractal field (spectrum k^−3) on a tile that repeats. */
final class Clouds {

    private static final int COLUMNS = 1024;
    private static final int ROWS = 256;

    private final float[] field = new float[COLUMNS * ROWS];

    Clouds(long seed) {
        Dice dice = new Dice(seed);
        int n = COLUMNS * ROWS;
        double[] re = new double[n];
        double[] im = new double[n];
        for (int kx = 0; kx < COLUMNS; kx++) {
            for (int ky = 0; ky < ROWS; ky++) {
                int x = kx < COLUMNS / 2 ? kx : kx - COLUMNS;
                int y = ky < ROWS / 2 ? ky : ky - ROWS;
                double k = Math.sqrt((double) x * x + 9.0 * y * y) + 1e-9;
                double amplitude = k < 1.5 ? 0 : 1 / Math.sqrt(k * k * k);
                re[kx * ROWS + ky] = amplitude * dice.gaussian();
                im[kx * ROWS + ky] = amplitude * dice.gaussian();
            }
        }
        double[] outRe = new double[n];
        double[] outIm = new double[n];
        new Fft(COLUMNS, ROWS).inverse(re, im, outRe, outIm);
        double squares = 0;
        for (double v : outRe) {
            squares += v * v;
        }
        double scale = 1 / Math.sqrt(squares / n);
        for (int i = 0; i < n; i++) {
            field[i] = (float) (outRe[i] * scale);
        }
    }

    /** Cover, 0 to 1, at ({@code u}, {@code v}) in widths of the picture. */
    double cover(double u, double v) {
        double x = u * 600;
        double y = v * 600;
        int x0 = (int) Math.floor(x);
        int y0 = (int) Math.floor(y);
        double ax = x - x0;
        double ay = y - y0;
        double top = at(x0, y0) * (1 - ax) + at(x0 + 1, y0) * ax;
        double bottom = at(x0, y0 + 1) * (1 - ax) + at(x0 + 1, y0 + 1) * ax;
        double f = top * (1 - ay) + bottom * ay;
        double a = Math.max(0, Math.min(1, 0.5 + 0.45 * f));
        return a * a * (3 - 2 * a);
    }

    private double at(int x, int y) {
        return field[Math.floorMod(y, ROWS) * COLUMNS + Math.floorMod(x, COLUMNS)];
    }
}
