package ebblight.demo;

/** The rock of the shore: height over still water by place, in metres; x to the right of the camera, y ahead of it. */
final class Ground {

    /** Below this the ground is out of sight under water. */
    static final double DEEP_METRES = -0.9;

    /** Rocks that stand in the water: x, y, radius, height over the bed. */
    private static final double[][] ROCKS = {
        {-3.4, 15.5, 1.5, 1.05},
        {-1.9, 17.2, 0.8, 0.85},
        {0.75, 8.6, 0.70, 1.12},
        {1.55, 9.6, 0.42, 0.98},
        {9.5, 21.0, 2.6, 1.25}
    };

    private Ground() {}

    /** The large shape without its detail: bed, shelf, hummock and rocks. */
    static double shape(double x, double y) {
        double z = DEEP_METRES;
        double edge = 3.2 + 1.12 * Math.max(0, 0.9 - x) + 0.5 * Math.max(0, x - 1.6);
        double inside = (edge - y) / 1.5;
        if (inside > -2.5) {
            inside += 0.55 * Relief.noise(x / 2.3, y / 2.3, 11) + 0.22 * Relief.noise(x / 0.9, y / 0.9, 12);
            z = Math.max(z, DEEP_METRES + 1.18 * Relief.step(-1.3, 1.6, inside) + 0.10 * Math.max(0, inside - 1));
        }
        double hx = (x - 3.55) / 1.25;
        double hy = (y - 4.7) / 1.1;
        double hummock = StrictMath.exp(-hx * hx - hy * hy);
        z = Math.max(z, DEEP_METRES + 1.9 * hummock);
        for (double[] rock : ROCKS) {
            double dx = (x - rock[0]) / rock[2];
            double dy = (y - rock[1]) / rock[2];
            double d = dx * dx + dy * dy;
            if (d < 4) {
                double rough = Relief.fractal(x / rock[2] * 1.1, y / rock[2] * 1.1, 3, 0.6, 13);
                d *= 1 + 0.6 * Math.max(-1, Math.min(1, rough));
                z = Math.max(z, DEEP_METRES + rock[3] * 1.12 * (1 - Relief.step(0.1, 1.6, d)));
            }
        }
        return z;
    }

    /** The rock itself: beds broken along joints into blocks, each a little tilted, down to a grain of centimetres. */
    static double height(double x, double y) {
        double z = shape(x, y);
        if (z <= DEEP_METRES + 0.02) {
            return z;
        }
        double rough = Relief.step(DEEP_METRES, DEEP_METRES + 0.55, z);
        // the joints run across the view, a little askew, and wander
        double along = 0.93 * x + 0.36 * y + 0.10 * Relief.noise(x / 0.5, y / 0.5, 20);
        double across = -0.36 * x + 0.93 * y + 0.10 * Relief.noise(x / 0.5, y / 0.5, 21);
        double large = Joints.block(along / 1.15, across / 0.62, 22);
        double small = Joints.block(along / 0.34 + 3, across / 0.20, 23);
        double bed = 0.085;
        double q = (z + 0.05 * along + 0.15 * large) / bed;
        double whole = Math.floor(q);
        double part = q - whole;
        double steps = (whole + Relief.step(0.55, 1.0, part)) * bed - q * bed;
        double grain = Relief.fractal(x / 0.10, y / 0.10, 3, 0.55, 30);
        // the sea has worn the rocks that stand further out
        double worn = 0.25 + 0.75 / (1 + y * y / 120);
        double near = 1 - Relief.step(7, 13, y);
        return z
                + rough * (worn * (0.15 * large + 0.60 * steps) + near * (0.045 * small + 0.15 * steps) + 0.009 * grain)
                + rough * near * 0.0035 * Relief.fractal(x / 0.03, y / 0.03, 2, 0.6, 34);
    }
}
