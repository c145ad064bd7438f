package ebblight.demo;

import java.util.ArrayList;
import java.util.List;

/** What is left of the pier: two rows of posts that walk out into the water, a few of them broken or gone. */
final class Pier {

    /**
     * A round post.
     *
     * @param x to the right of the camera, metres
     * @param ahead of the camera, metres
     * @param radius metres
     * @param top height over still water, metres
     * @param lean metres to the right for each metre of height
     */
    record Post(double x, double ahead, double radius, double top, double lean) {}

    static final List<Post> POSTS = posts();

    private Pier() {}

    private static List<Post> posts() {
        Dice dice = new Dice(31);
        List<Post> posts = new ArrayList<>();
        double ahead = 7.2;
        for (int pair = 0; pair < 13; pair++) {
            double middle = 2.75 - 0.118 * (ahead - 7.2);
            for (int side = 0; side < 2; side++) {
                double x = middle + (side == 0 ? -0.62 : 0.62) + dice.uniform(-0.06, 0.06);
                double radius = dice.uniform(0.095, 0.135);
                double top = 2.28 + dice.uniform(-0.12, 0.30);
                double lean = dice.uniform(-0.035, 0.035);
                boolean broken = dice.uniform() < 0.18;
                boolean gone = pair > 1 && dice.uniform() < 0.14;
                if (!gone) {
                    double y = ahead + dice.uniform(-0.15, 0.15);
                    posts.add(new Post(x, y, radius, broken ? dice.uniform(0.7, 1.5) : top, lean));
                }
            }
            ahead *= 1.19;
        }
        return List.copyOf(posts);
    }

    static void paint(Easel easel) {
        double[] rgb = new double[3];
        for (int i = 0; i < POSTS.size(); i++) {
            paint(easel, POSTS.get(i), i, rgb);
        }
    }

    private static void paint(Easel easel, Post post, int number, double[] rgb) {
        double margin = Math.abs(post.lean) * 3 + post.radius * 1.2;
        int from = (int) Math.max(0, Math.floor(easel.column((post.x - margin) / post.ahead)));
        int to = (int) Math.min(easel.columns, Math.ceil(easel.column((post.x + margin) / post.ahead)));
        int top = (int) Math.max(0, easel.row((post.top + 0.1 - Lens.HEIGHT_METRES) / post.ahead));
        int bottom = (int) Math.min(easel.rows, easel.row((-0.35 - Lens.HEIGHT_METRES) / post.ahead));
        for (int x = from; x < to; x++) {
            double px = easel.right(x) * post.ahead;
            for (int y = top; y < bottom; y++) {
                double z = easel.up(y) * post.ahead + Lens.HEIGHT_METRES;
                double grain = Relief.fractal(px * 46 + 40 * number, z * 1.6, 4, 0.65, 80);
                double radius = post.radius * (1 - 0.06 * z) * (1 + 0.05 * Relief.noise(z * 3, number, 83));
                double across = (px - post.x - post.lean * z) / radius;
                double crown = post.top
                        + 0.05 * across * (number % 3 - 1)
                        + 0.035 * Relief.fractal(px * 14, number, 2, 0.6, 85);
                if (Math.abs(across) < 1 && z < crown) {
                    // the near side of a round post meets the water lower in the picture than its edges
                    double facing = Math.sqrt(1 - across * across);
                    double ahead = post.ahead - radius * facing;
                    double height = Lens.HEIGHT_METRES - (Lens.HEIGHT_METRES - z) * ahead / post.ahead;
                    shade(across, facing, height, grain, number, rgb);
                    easel.put(x, y, ahead, height, rgb);
                }
            }
        }
    }

    private static void shade(double across, double facing, double z, double grain, int number, double[] rgb) {
        Daylight.on(across + 0.25 * grain * facing, -facing, 0.15, rgb);
        // the edge of a cylinder turns away from the eye: there the light from behind slides round it
        double rim = Relief.step(0.72, 1.0, Math.abs(across)) * (across < 0 ? 0.9 : 0.35) * (0.6 + 0.4 * grain);
        double rough = 0.12 * grain + 0.10 * Relief.noise(across * 2 + 9 * number, z * 5, 87);
        double wet = 1 - Relief.step(0.50, 0.95, z + rough);
        double weed = 1 - Relief.step(0.10, 0.42, z + 1.6 * rough);
        double barnacles = Relief.step(0.2, 0.7, Relief.noise(across * 7 + 5 * number, z * 42, 88))
                * Relief.step(0.12, 0.4, z)
                * (1 - Relief.step(0.45, 0.75, z + rough));
        double crack = Relief.step(-0.75, -0.35, grain);
        double bark = (0.75 + 0.35 * grain) * (0.35 + 0.65 * crack) * (1 - 0.6 * wet);
        rgb[0] = rgb[0] * bark * (0.30 - 0.20 * weed + 0.16 * barnacles) + rim * 0.15 * (1 - 0.6 * weed);
        rgb[1] = rgb[1] * bark * (0.265 - 0.15 * weed + 0.16 * barnacles) + rim * 0.10 * (1 - 0.6 * weed);
        rgb[2] = rgb[2] * bark * (0.235 - 0.19 * weed + 0.15 * barnacles) + rim * 0.075 * (1 - 0.6 * weed);
    }
}
