package ebblight.demo;

import ebblight.core.numeric.Work;

/** How deep the still water is where a pixel meets it, for the foam; worked out once for a picture size. */
final class Shore {

    private static final double FAR_METRES = 40;
    private static final double POST_REACH_METRES = 0.35;

    /** Metres; {@link Foam#DEEPEST_METRES} and more where no foam can be. */
    final float[] depth;

    Shore(Lens lens, int firstRow, Work work) {
        int w = lens.width();
        depth = new float[w * (lens.height() - firstRow)];
        work.forEach(lens.height() - firstRow, i -> {
            double down = Math.max(-lens.up(firstRow + i + 0.5), 1e-6);
            double ahead = Lens.HEIGHT_METRES / down;
            for (int x = 0; x < w; x++) {
                double across = lens.right(x + 0.5) * ahead;
                depth[i * w + x] = ahead > FAR_METRES ? 9 : (float) depth(across, ahead);
            }
        });
    }

    private static double depth(double x, double y) {
        double depth = -Ground.shape(x, y);
        for (Pier.Post post : Pier.POSTS) {
            double dx = x - post.x();
            double dy = y - post.ahead();
            double gap = Math.sqrt(dx * dx + dy * dy) - post.radius();
            if (gap < POST_REACH_METRES) {
                depth = Math.min(depth, 0.34 + 0.5 * Math.max(0, gap) / POST_REACH_METRES);
            }
        }
        return depth;
    }
}
