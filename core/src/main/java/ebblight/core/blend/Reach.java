package ebblight.core.blend;

import ebblight.core.motion.Clip;
import ebblight.core.motion.Horizon;
import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Optional;

/**
 * Lets layers of moving parts reach into what was taken for still beside them, as far as something moves there: what
 * stands still looks the same in every layer, what moves belongs to the time wished for its neighbour. A pixel moves when
 * its deviation in time is above twice the usual one of still pixels that are as bright.
 */
final class Reach {

    private static final int BINS = 8;
    private static final double MOVES = 2;
    private static final double QUIET = 0.25;
    /** How far a layer reaches, as a share of the width. */
    private static final double FARTHEST = 0.06;

    private static final double DARK = 1e-5;

    private Reach() {}

    /**
     * Gives still pixels that move to the nearest layer of a moving part.
     *
     * @param layer the layer of every pixel; changed
     * @param still pixels that were taken for still and that nobody asked anything of
     * @param moving pixels of moving parts
     */
    static void apply(Clip clip, Optional<Horizon> horizon, int[] layer, boolean[] still, boolean[] moving, Work work) {
        int w = clip.width();
        int h = clip.height();
        boolean[] moves = moves(clip, still, work);
        int[] steps = new int[layer.length];
        Arrays.fill(steps, -1);
        ArrayDeque<Integer> edge = new ArrayDeque<>();
        for (int p = 0; p < layer.length; p++) {
            if (moving[p]) {
                steps[p] = 0;
                edge.add(p);
            }
        }
        int farthest = (int) Math.ceil(FARTHEST * w);
        int[] across = {-1, 1, 0, 0};
        int[] down = {0, 0, -1, 1};
        while (!edge.isEmpty()) {
            int p = edge.remove();
            for (int k = 0; k < across.length && steps[p] < farthest; k++) {
                int x = p % w + across[k];
                int y = p / w + down[k];
                int q = y * w + x;
                if (x >= 0 && x < w && y >= 0 && y < h && steps[q] < 0 && moves[q] && !crosses(horizon, p, q, w)) {
                    steps[q] = steps[p] + 1;
                    layer[q] = layer[p];
                    edge.add(q);
                }
            }
        }
    }

    private static boolean crosses(Optional<Horizon> horizon, int p, int q, int w) {
        return horizon.isPresent() && above(horizon.get(), p, w) != above(horizon.get(), q, w);
    }

    private static boolean above(Horizon line, int p, int w) {
        double across = (p % w + 0.5) / w;
        int row = p / w;
        return row + 0.5 < line.left() + across * (line.right() - line.left());
    }

    /** Still pixels whose light changes more than that of others as bright. */
    private static boolean[] moves(Clip clip, boolean[] still, Work work) {
        int n = clip.width() * clip.height();
        double[] sum = new double[n];
        double[] squares = new double[n];
        float[] plane = new float[n];
        double level = 0;
        for (int i = 0; i < clip.frames(); i++) {
            work.check();
            clip.luminance(i, plane);
            double mean = DARK;
            for (float v : plane) {
                mean += v / n;
            }
            level = i == 0 ? mean : level;
            for (int p = 0; p < n; p++) {
                double v = plane[p] * level / mean;
                sum[p] += v;
                squares[p] += v * v;
            }
        }
        float[] variance = new float[n];
        float[] mean = new float[n];
        for (int p = 0; p < n; p++) {
            double m = sum[p] / clip.frames();
            mean[p] = (float) m;
            variance[p] = (float) Math.max(0, squares[p] / clip.frames() - m * m);
        }
        Blur.box(variance, variance, plane, clip.width(), clip.height(), 1);
        return louder(variance, mean, still);
    }

    private static boolean[] louder(float[] variance, float[] mean, boolean[] still) {
        int n = mean.length;
        float[] sorted = mean.clone();
        Arrays.sort(sorted);
        float[][] inBin = new float[BINS][n];
        int[] count = new int[BINS];
        int[] bin = new int[n];
        for (int p = 0; p < n; p++) {
            int b = 0;
            while (b < BINS - 1 && mean[p] >= sorted[(int) ((long) n * (b + 1) / BINS)]) {
                b++;
            }
            bin[p] = b;
            if (still[p]) {
                inBin[b][count[b]++] = variance[p];
            }
        }
        double[] usual = new double[BINS];
        for (int b = 0; b < BINS; b++) {
            usual[b] = count[b] == 0 ? Double.POSITIVE_INFINITY : Quantiles.quantile(inBin[b], count[b], QUIET);
        }
        boolean[] moves = new boolean[n];
        for (int p = 0; p < n; p++) {
            moves[p] = still[p] && variance[p] > MOVES * MOVES * usual[bin[p]];
        }
        return moves;
    }
}
