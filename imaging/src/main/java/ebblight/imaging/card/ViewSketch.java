package ebblight.imaging.card;

import ebblight.core.motion.PhaseCorrelation;

/**
 * What of a frame tells its view apart from another whatever the exposure: how each place of a small copy differs from
 * what is round it, in stops, held to ±{@value #MOST} so that single edges do not rule.
 */
final class ViewSketch {

    private static final double MOST = 1;
    /** Cells of a frame that make one of the sketch, along a side. */
    private static final int REDUCED = 2;
    /** Cells of the sketch round a place with which it is compared, either way. */
    private static final int ROUND = 5;
    /** Farthest that the tripod may have moved within a view, share of the width. */
    private static final double FARTHEST = 0.06;
    /** Likeness from which it is not asked whether another shift fits better still. */
    private static final double CLEARLY_ALIKE = 0.6;
    /** Places that two sketches must share. */
    private static final int LEAST_SHARED = 150;

    private final int width;
    private final int height;
    private final float[] pattern;
    private final boolean[] known;

    private ViewSketch(int width, int height, float[] pattern, boolean[] known) {
        this.width = width;
        this.height = height;
        this.pattern = pattern;
        this.known = known;
    }

    static ViewSketch of(Cells cells) {
        int w = cells.width() / REDUCED;
        int h = cells.height() / REDUCED;
        double[] level = new double[w * h];
        boolean[] known = new boolean[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                int n = 0;
                for (int k = 0; k < REDUCED * REDUCED; k++) {
                    int cell = (y * REDUCED + k / REDUCED) * cells.width() + x * REDUCED + k % REDUCED;
                    if (cells.known(cell)) {
                        sum += cells.level(cell);
                        n++;
                    }
                }
                known[y * w + x] = n > 0;
                level[y * w + x] = n > 0 ? sum / n : 0;
            }
        }
        float[] pattern = HighPass.of(level, known, w, h, ROUND, MOST);
        levelRows(pattern, known, w, h);
        return new ViewSketch(w, h, pattern, known);
    }

    /** Takes the mean of each row off, so that two views with the horizon at one height are not taken for one. */
    private static void levelRows(float[] pattern, boolean[] known, int w, int h) {
        for (int y = 0; y < h; y++) {
            double sum = 0;
            int n = 0;
            for (int i = y * w; i < (y + 1) * w; i++) {
                if (known[i]) {
                    sum += pattern[i];
                    n++;
                }
            }
            for (int i = y * w; i < (y + 1) * w; i++) {
                pattern[i] = known[i] ? (float) (pattern[i] - sum / Math.max(1, n)) : 0;
            }
        }
    }

    /** How alike two views are, −1 to 1, once the small movement of a tripod is taken off; 0 where it is too large. */
    double likeness(ViewSketch other) {
        if (width != other.width || height != other.height) {
            return 0;
        }
        double best = correlation(other, 0, 0);
        if (best > CLEARLY_ALIKE) {
            return best;
        }
        double[] shift = PhaseCorrelation.shift(pattern, other.pattern, width, height);
        int dx = (int) Math.rint(shift[0]);
        int dy = (int) Math.rint(shift[1]);
        if (Math.hypot(dx, dy) <= FARTHEST * width && (dx != 0 || dy != 0)) {
            best = Math.max(best, correlation(other, dx, dy));
        }
        return best;
    }

    private double correlation(ViewSketch other, int dx, int dy) {
        double ab = 0;
        double aa = 0;
        double bb = 0;
        int n = 0;
        for (int y = Math.max(0, -dy); y < Math.min(height, height - dy); y++) {
            for (int x = Math.max(0, -dx); x < Math.min(width, width - dx); x++) {
                int p = y * width + x;
                int q = (y + dy) * width + x + dx;
                if (known[p] && other.known[q]) {
                    ab += pattern[p] * other.pattern[q];
                    aa += pattern[p] * pattern[p];
                    bb += other.pattern[q] * other.pattern[q];
                    n++;
                }
            }
        }
        return n < LEAST_SHARED || aa == 0 || bb == 0 ? 0 : ab / Math.sqrt(aa * bb);
    }
}
