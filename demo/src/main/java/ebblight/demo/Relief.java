package ebblight.demo;

/** Noise over the plane for rock and wood: value noise on a lattice of hashed corners, and its sums over octaves. */
final class Relief {

    private Relief() {}

    private static double corner(int x, int y, int seed) {
        int h = x * 0x27D4EB2D ^ y * 0x165667B1 ^ seed * 0x9E3779B1;
        h = (h ^ h >>> 15) * 0x85EBCA6B;
        h = (h ^ h >>> 13) * 0xC2B2AE35;
        return (h ^ h >>> 16) * 0x1p-31;
    }

    /** Smooth noise between −1 and 1 with features of length 1. */
    static double noise(double x, double y, int seed) {
        double xf = Math.floor(x);
        double yf = Math.floor(y);
        int xi = (int) xf;
        int yi = (int) yf;
        double u = fade(x - xf);
        double v = fade(y - yf);
        double top = corner(xi, yi, seed) * (1 - u) + corner(xi + 1, yi, seed) * u;
        double bottom = corner(xi, yi + 1, seed) * (1 - u) + corner(xi + 1, yi + 1, seed) * u;
        return top + v * (bottom - top);
    }

    private static double fade(double t) {
        return t * t * t * (t * (t * 6 - 15) + 10);
    }

    /** Octaves of noise, each half as long; amplitude times {@code roughness} from one to the next. */
    static double fractal(double x, double y, int octaves, double roughness, int seed) {
        double sum = 0;
        double amplitude = 1;
        double px = x;
        double py = y;
        for (int i = 0; i < octaves; i++) {
            sum += amplitude * noise(px, py, seed + i);
            // turned a little from octave to octave, so that the lattice does not show
            double rx = 1.62 * px - 1.18 * py;
            py = 1.18 * px + 1.62 * py;
            px = rx;
            amplitude *= roughness;
        }
        return sum;
    }

    /** As {@link #fractal}, with sharp crests: 1 on a crest, towards 0 and below in the hollows. */
    static double ridged(double x, double y, int octaves, double roughness, int seed) {
        double sum = 0;
        double amplitude = 1;
        double px = x;
        double py = y;
        for (int i = 0; i < octaves; i++) {
            sum += amplitude * (1 - 2 * Math.abs(noise(px, py, seed + i)));
            double rx = 1.62 * px - 1.18 * py;
            py = 1.18 * px + 1.62 * py;
            px = rx;
            amplitude *= roughness;
        }
        return sum;
    }

    /** 0 below {@code from}, 1 above {@code to}, smooth between. */
    static double step(double from, double to, double x) {
        double t = Math.max(0, Math.min(1, (x - from) / (to - from)));
        return t * t * (3 - 2 * t);
    }
}
