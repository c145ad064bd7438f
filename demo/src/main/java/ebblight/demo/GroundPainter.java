package ebblight.demo;

/** Paints the shore column by column from near to far: a step ahead shows as far as it rises above all before it. */
final class GroundPainter {

    private static final double NEAR_METRES = 2.2;
    private static final double FAR_METRES = 34;
    private static final double SLOPE_STEP_METRES = 0.014;
    private static final double LARGEST_STEP_METRES = 0.05;
    private static final double LEAST_STEP_METRES = 0.0015;
    private static final double LEAST_FACING = 0.10;
    /** Ground this far under still water may fall dry between waves; below it nothing is painted. */
    private static final double LOWEST_METRES = -0.30;

    private GroundPainter() {}

    static void paint(Easel easel) {
        double[] rgb = new double[3];
        double[] mirrored = new double[3];
        double fine = easel.lens.focalPixels() * Easel.FINE;
        for (int x = 0; x < easel.columns; x++) {
            double right = easel.right(x);
            double top = easel.rows;
            double reached = NEAR_METRES;
            double before = Ground.DEEP_METRES;
            double step = LARGEST_STEP_METRES;
            while (reached < FAR_METRES) {
                // half a fine row of flat ground, finer where a face rises over several rows at once
                step = Math.min(2 * step, Math.max(0.005, 0.5 * reached * reached / (Lens.HEIGHT_METRES * fine)));
                step = Math.min(step, LARGEST_STEP_METRES);
                double ahead = reached + step;
                double px = right * ahead;
                double z = Ground.shape(px, ahead);
                if (z < LOWEST_METRES - 0.35) {
                    reached = ahead;
                    step = LARGEST_STEP_METRES;
                    before = Ground.DEEP_METRES;
                    continue;
                }
                z = Ground.height(px, ahead);
                double row = easel.row((z - Lens.HEIGHT_METRES) / ahead);
                while (top - row > 3 && step > LEAST_STEP_METRES) {
                    step /= 2;
                    ahead = reached + step;
                    px = right * ahead;
                    z = Ground.height(px, ahead);
                    row = easel.row((z - Lens.HEIGHT_METRES) / ahead);
                }
                if (row < top) {
                    int from = (int) Math.max(0, Math.ceil(row - 0.5));
                    int to = (int) Math.ceil(top - 0.5);
                    // how much of what shows here is a broken face rather than the ground on top of it
                    double face = Relief.step(0.8, 2.4, (z - before) / step);
                    for (int y = from; y < to; y++) {
                        double height = face > 0 ? z - (y - row) * (z - before) / Math.max(1, top - row) : z;
                        if (height > LOWEST_METRES) {
                            if (face > 0 || y == from) {
                                shade(px, ahead, height, face, rgb, mirrored);
                            }
                            easel.put(x, y, ahead, height, rgb);
                        }
                    }
                    top = row;
                }
                before = z;
                reached = ahead;
            }
        }
    }

    private static void shade(double x, double y, double z, double face, double[] rgb, double[] mirrored) {
        double e = Math.max(SLOPE_STEP_METRES, y * 0.002);
        double sx = limited((Ground.height(x + e, y) - Ground.height(x - e, y)) / (2 * e));
        double sy = limited((Ground.height(x, y + e) - Ground.height(x, y - e)) / (2 * e));
        if (face > 0) {
            sx += face * (0.8 * Relief.noise(x / 0.09, z / 0.05, 45) - sx);
            sy += face * (2.0 + 0.8 * Relief.noise(x / 0.05, z / 0.03, 46) - sy);
        }
        // what is seen faces the eye: a crest is not to catch the light of the slope behind it
        double away = (Lens.HEIGHT_METRES - z) / y;
        sy = Math.max(sy, LEAST_FACING - away);
        double n = 1 / Math.sqrt(1 + sx * sx + sy * sy);
        double nx = -sx * n;
        double ny = -sy * n;
        double nz = n;
        double near = 1 - Relief.step(3.5, 9, y);
        double patches = 0.5 + 0.5 * Relief.fractal(x / 0.35, y / 0.35, 3, 0.6, 41);
        double grain = near * Relief.fractal(x / 0.022, y / 0.022 + z / 0.03, 3, 0.7, 47);
        double hollow = Relief.step(-0.16, 0.10, z - Ground.shape(x, y));
        double wet = 1 - Relief.step(0.36, 0.80, z + 0.16 * Relief.fractal(x / 0.5, y / 0.5, 2, 0.6, 43));
        double weed = (1 - Relief.step(0.02, 0.2, z)) * Relief.step(-0.2, 0.5, Relief.noise(x / 0.3, y / 0.3, 44));
        double lichen = Relief.step(0.35, 0.75, Relief.fractal(x / 0.16, y / 0.16, 3, 0.65, 48))
                * Relief.step(0.5, 0.8, z)
                * near;
        double barnacles = Relief.step(0.45, 0.8, Relief.noise(x / 0.016, y / 0.016, 49))
                * Relief.step(0.1, 0.6, Relief.noise(x / 0.4, y / 0.4, 50))
                * Relief.step(0.05, 0.2, z)
                * (1 - Relief.step(0.4, 0.6, z))
                * near;
        Daylight.on(nx, ny, nz, rgb);
        double dark = (0.35 + 0.65 * hollow) * (1 - 0.62 * wet) * (0.78 + 0.5 * patches) * (1 + 0.35 * grain);
        rgb[0] *= dark * (0.215 - 0.10 * weed + 0.10 * lichen + 0.22 * barnacles);
        rgb[1] *= dark * (0.196 - 0.05 * weed + 0.08 * lichen + 0.21 * barnacles);
        rgb[2] *= dark * (0.180 - 0.10 * weed + 0.01 * lichen + 0.19 * barnacles);
        gloss(x, y, z, nx, ny, nz, wet * (1 - barnacles), rgb, mirrored);
    }

    private static double limited(double slope) {
        return slope / (1 + Math.abs(slope) / 1.3);
    }

    /** Wet rock mirrors the sky, most where it lies flat and is seen at a grazing angle. */
    private static void gloss(
            double x,
            double y,
            double z,
            double nx,
            double ny,
            double nz,
            double wet,
            double[] rgb,
            double[] mirrored) {
        double vx = -x;
        double vy = -y;
        double vz = Lens.HEIGHT_METRES - z;
        double inverse = 1 / Math.sqrt(vx * vx + vy * vy + vz * vz);
        double cos = (nx * vx + ny * vy + nz * vz) * inverse;
        if (cos <= 0.02) {
            return;
        }
        double rx = 2 * cos * nx - vx * inverse;
        double ry = 2 * cos * ny - vy * inverse;
        double rz = 2 * cos * nz - vz * inverse;
        if (rz <= 0) {
            return;
        }
        EveningSky.clear(rx, rz, mirrored);
        double ahead = 0.35 + 0.65 * Relief.step(-0.6, 0.5, ry);
        double share = Fresnel.reflectance(Math.min(1, cos)) * (0.03 + 0.75 * wet) * ahead;
        for (int c = 0; c < 3; c++) {
            rgb[c] += share * (mirrored[c] - rgb[c]);
        }
    }
}
