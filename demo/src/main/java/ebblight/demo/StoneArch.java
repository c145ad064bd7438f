package ebblight.demo;

/** The rock with the doorway: a wall of old beds across the view, 75 m off, seen against the light. */
final class StoneArch {

    static final double AHEAD_METRES = 75;
    static final double FROM_X = -43;
    static final double TO_X = -22;
    static final double TOP_METRES = 13.5;
    static final double DOOR_X = -30.4;
    static final double DOOR_HALF_METRES = 2.3;
    static final double DOOR_TOP_METRES = 7.6;

    private StoneArch() {}

    static boolean solid(double x, double z) {
        double warp = 0.8 * Relief.fractal(x / 4, z / 4, 3, 0.45, 60);
        double side = 0.35 * Relief.fractal(z / 1.3 + 7, 0, 3, 0.55, 64);
        double skirt = 1.6 * Relief.step(3.0, -0.5, z);
        double left = FROM_X + 0.22 * z - skirt + warp + side;
        double right = TO_X - 0.16 * z + skirt * 0.8 + warp - side;
        double top = TOP_METRES
                + 1.6 * Relief.noise(x / 6, 0, 66)
                + 0.35 * Relief.fractal(x / 1.1, 0, 3, 0.5, 67)
                - 3.4 * Relief.step(-29, TO_X, x)
                - 2.2 * Relief.step(-38, FROM_X, x);
        if (x < left || x > right || z > top) {
            return false;
        }
        double dx = (x - DOOR_X + 0.35 * warp) / (DOOR_HALF_METRES + 0.3 * side - 0.05 * z);
        double above = Math.max(0, z - DOOR_TOP_METRES + 2.6) / (2.6 + 0.35 * warp);
        return dx * dx + above * above > 1;
    }

    static void paint(Easel easel) {
        double[] rgb = new double[3];
        int from = (int) Math.max(0, Math.floor(easel.column((FROM_X - 3) / AHEAD_METRES)));
        int to = (int) Math.min(easel.columns, Math.ceil(easel.column((TO_X + 3) / AHEAD_METRES)));
        int top = (int) Math.max(0, easel.row((TOP_METRES + 3) / AHEAD_METRES));
        int bottom = (int) easel.row((-0.3 - Lens.HEIGHT_METRES) / AHEAD_METRES);
        for (int x = from; x < to; x++) {
            double px = easel.right(x) * AHEAD_METRES;
            for (int y = top; y < bottom; y++) {
                double z = easel.up(y) * AHEAD_METRES + Lens.HEIGHT_METRES;
                if (solid(px, z)) {
                    shade(px, z, rgb);
                    easel.put(x, y, AHEAD_METRES, z, rgb);
                }
            }
        }
    }

    /** Face of the wall in metres towards the camera: beds that stand out, cracks that cut through them. */
    private static double face(double x, double z) {
        double warp = 0.5 * Relief.fractal(x / 5, z / 5, 2, 0.5, 72);
        double bed = (z + 0.10 * x + warp) / 0.95;
        double whole = Math.floor(bed);
        double shelf = Relief.noise(whole * 7.3, x / 3.5, 73);
        double next = Relief.noise((whole + 1) * 7.3, x / 3.5, 73);
        double ledge = shelf + Relief.step(0.75, 1.0, bed - whole) * (next - shelf);
        double crack = 1 - Math.min(1, Math.abs(Relief.fractal(x / 1.9 + 0.12 * warp, z / 14, 3, 0.4, 74)) * 16);
        return 0.30 * ledge - 0.22 * crack + 0.34 * Relief.fractal(x / 1.6, z / 1.0, 5, 0.55, 70);
    }

    private static void shade(double x, double z, double[] rgb) {
        double e = 0.09;
        double here = face(x, z);
        double sx = (face(x + e, z) - here) / e;
        double sz = (face(x, z + e) - here) / e;
        // the wall faces the camera; its edges turn towards the glow behind it
        double edge = solid(x + 0.45, z + 0.1) ? 0 : 1;
        double soffit = solid(x, z - 0.6) || z < 1 ? 0 : 1;
        double flat = 1 / (1 + 0.35 * Math.sqrt(sx * sx + sz * sz));
        double nx = -sx * flat;
        double nz = 0.25 - sz * flat;
        double ny = 0.95 * edge + 0.5 * soffit - 1;
        double n = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
        Daylight.on(nx * n, ny * n, nz * n, rgb);
        double wet = 1 - Relief.step(0.7, 1.7, z + 0.5 * here);
        double tone = 0.5 + 0.5 * Relief.fractal(x / 3, (z + 0.1 * x) / 0.8, 3, 0.6, 75);
        double dark = (0.62 + 0.55 * Math.max(-0.6, Math.min(0.6, here))) * (0.75 + 0.5 * tone) * (1 - 0.6 * wet);
        rgb[0] = (0.205 - 0.05 * wet) * rgb[0] * dark + 0.012;
        rgb[1] = (0.180 - 0.03 * wet) * rgb[1] * dark + 0.013;
        rgb[2] = (0.168 - 0.05 * wet) * rgb[2] * dark + 0.017;
    }
}
