package ebblight.demo;

/** What the evening gives to a matt or a wet surface, by the way it faces; scene-linear, by eye. */
final class Daylight {

    /** Towards the glow under the horizon. */
    private static final double GLOW_X = EveningSky.GLOW_RIGHT;

    private static final double GLOW_Y = 0.975;
    private static final double GLOW_Z = 0.16;

    private Daylight() {}

    /** Light on a matt white surface with unit normal (x right, y ahead, z up), into {@code rgb}. */
    static void on(double nx, double ny, double nz, double[] rgb) {
        double sky = 0.5 + 0.5 * nz;
        double glow = Math.max(0, nx * GLOW_X + ny * GLOW_Y + nz * GLOW_Z + 0.15) / 1.15;
        double warm = glow * glow;
        rgb[0] = 0.04 + 0.285 * sky + 0.85 * warm;
        rgb[1] = 0.04 + 0.315 * sky + 0.50 * warm;
        rgb[2] = 0.05 + 0.395 * sky + 0.27 * warm;
    }
}
