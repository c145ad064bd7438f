package ebblight.demo;

/** Two ridges of a far shore on the right, bluer and paler with distance. */
final class FarShore {

    private static final double[][] COLOUR = {{0.225, 0.185, 0.225}, {0.120, 0.105, 0.135}};
    private static final double[] DISTANCE_METRES = {9000, 4000};

    private FarShore() {}

    /** Height of ridge 0 (far) or 1 (near) above the horizon as a tangent, by tangent to the right; 0 = none. */
    static double ridge(int i, double right) {
        double rise = i == 0
                ? 0.062 * Relief.step(-0.02, 0.55, right) * (0.8 + 0.35 * Relief.noise(right * 6 + 3, 0, 50))
                : 0.070 * Relief.step(0.30, 0.78, right) * (0.85 + 0.3 * Relief.noise(right * 9, 0, 51));
        double rough = 0.0035 * Relief.fractal(right * 40, 0, 4, 0.5, 52 + i);
        return rise <= 0 ? 0 : Math.max(0, rise + rough * Relief.step(0, 0.02, rise));
    }

    static void paint(Easel easel) {
        double[] rgb = new double[3];
        for (int i = 0; i < 2; i++) {
            for (int x = 0; x < easel.columns; x++) {
                double right = easel.right(x);
                double ridge = ridge(i, right);
                if (ridge <= 0) {
                    continue;
                }
                int bottom = (int) Math.rint(easel.row(0));
                for (int y = (int) Math.max(0, Math.rint(easel.row(ridge))); y < bottom; y++) {
                    double up = easel.up(y) / ridge;
                    double low = 1 - Math.max(0, Math.min(1, up));
                    for (int c = 0; c < 3; c++) {
                        rgb[c] = COLOUR[i][c] * (1 + (i == 0 ? 0.35 : 0.55) * low);
                    }
                    easel.put(x, y, DISTANCE_METRES[i], 5, rgb);
                }
            }
        }
    }
}
