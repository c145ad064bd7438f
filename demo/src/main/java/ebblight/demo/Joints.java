package ebblight.demo;

/** Rock broken along joints: a plane of irregular cells, each with a height and a tilt of its own, and cracks between. */
final class Joints {

    private Joints() {}

    private static long hash(int x, int y, int seed) {
        return Dice.mix((long) x * 0x9E3779B97F4A7C15L ^ (long) y * 0xC2B2AE3D27D4EB4FL ^ seed);
    }

    /** Number 0, 1 or 2 out of a hash, uniform in [0, 1). */
    private static double part(long hash, int number) {
        return ((hash >>> (21 * number)) & 0x1FFFFF) * 0x1p-21;
    }

    /** Height of the block at a place, about −1 to 1; cells have length 1. */
    static double block(double x, double y, int seed) {
        int xi = (int) Math.floor(x);
        int yi = (int) Math.floor(y);
        double nearest = 9;
        double next = 9;
        int cx = 0;
        int cy = 0;
        double dx = 0;
        double dy = 0;
        for (int j = yi - 1; j <= yi + 1; j++) {
            for (int i = xi - 1; i <= xi + 1; i++) {
                long hash = hash(i, j, seed);
                double ox = x - i - 0.15 - 0.7 * part(hash, 0);
                double oy = y - j - 0.15 - 0.7 * part(hash, 1);
                double d = ox * ox + oy * oy;
                if (d < nearest) {
                    next = nearest;
                    nearest = d;
                    cx = i;
                    cy = j;
                    dx = ox;
                    dy = oy;
                } else if (d < next) {
                    next = d;
                }
            }
        }
        long character = hash(cx, cy, seed + 1000);
        double level = 2 * part(character, 0) - 1;
        double tiltX = part(character, 1) - 0.5;
        double tiltY = part(character, 2) - 0.5;
        double gap = Math.sqrt(next) - Math.sqrt(nearest);
        return 0.6 * level + 0.9 * (tiltX * dx + tiltY * dy) - 0.7 * (1 - Relief.step(0.0, 0.16, gap));
    }
}
