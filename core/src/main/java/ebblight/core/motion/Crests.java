package ebblight.core.motion;

import ebblight.core.numeric.Rounding;
import java.util.Arrays;

/**
 * How far apart along a row of the picture slow change still goes together: the crests of long waves span the view,
 * ripples and chop do not. Waves that go together across the view are few, so that a clip is a small sample of them,
 * and long ones run in a narrow band that a short clip cannot tell from the floor of a wind sea.
 *
 * <p>Measured on differences of means of blocks that lie far apart in the clip, as for the variogram: the
 * mean product of two pixels of a row that lie 0.15 to 1 widths apart over the mean square.
 */
final class Crests {

    /** Blocks are this share of the clip, and no longer than keeps waves of 6 s and more. */
    private static final double BLOCK = 0.25;

    private static final double LONGEST_BLOCK_SECONDS = 3;
    private static final int STARTS = 13;
    private static final double SEPARATION = 0.42;

    /** Cells across the picture; pixels three cells and more apart are compared. */
    private static final int CELLS = 20;

    private static final int APART = 3;
    private static final int FEWEST_FRAMES = 8;

    private final PixelSeries series;
    private final int[] at;
    private final int width;

    private Crests(PixelSeries series, int[] at, int width) {
        this.series = series;
        this.at = at;
        this.width = width;
    }

    /**
     * The likeness of far pixels of a row, 0 where there is none or too little to tell, at most 1.
     *
     * @param at where each pixel of the series lies in the picture, in order: row · width + column
     * @param width of the picture in pixels
     */
    static double of(PixelSeries series, int[] at, int width) {
        return series.frames() < FEWEST_FRAMES || width < CELLS ? 0 : new Crests(series, at, width).likeness();
    }

    private double likeness() {
        int frames = series.frames();
        int block = Math.max(
                1, (int) Rounding.even(Math.min(BLOCK * frames, LONGEST_BLOCK_SECONDS / series.spacingSeconds())));
        int starts = Math.min(STARTS, frames - block + 1);
        double[] means = new double[at.length * starts];
        int[] first = new int[starts];
        for (int k = 0; k < starts; k++) {
            first[k] = (int) Rounding.even(k * (double) (frames - block) / (starts - 1));
        }
        double[] sums = new double[frames + 1];
        for (int p = 0; p < at.length; p++) {
            for (int i = 0; i < frames; i++) {
                sums[i + 1] = sums[i] + series.sample(p, i);
            }
            for (int k = 0; k < starts; k++) {
                means[p * starts + k] = (sums[first[k] + block] - sums[first[k]]) / block;
            }
        }
        double[] far = new double[2];
        double square = 0;
        long squares = 0;
        for (int i = 0; i < starts; i++) {
            for (int j = i + 1; j < starts; j++) {
                if (first[j] - first[i] >= Math.max(block, SEPARATION * frames)) {
                    square += products(means, starts, i, j, far);
                    squares += at.length;
                }
            }
        }
        boolean told = far[1] > 0 && square > 0;
        return told ? Math.max(0, Math.min(1, far[0] / far[1] / (square / squares))) : 0;
    }

    /** Adds the far products of one pair of blocks and their number to {@code far}; the sum of squares. */
    private double products(double[] means, int starts, int i, int j, double[] far) {
        double[] sum = new double[CELLS];
        int[] count = new int[CELLS];
        double square = 0;
        int row = -1;
        for (int p = 0; p <= at.length; p++) {
            if (p == at.length || at[p] / width != row) {
                add(sum, count, far);
                row = p == at.length ? row : at[p] / width;
            }
            if (p < at.length) {
                double d = means[p * starts + i] - means[p * starts + j];
                int cell = at[p] % width * CELLS / width;
                sum[cell] += d;
                count[cell]++;
                square += d * d;
            }
        }
        return square;
    }

    /** Adds the products of cells far apart of one row, and empties the row. */
    private static void add(double[] sum, int[] count, double[] far) {
        for (int a = 0; a < CELLS; a++) {
            for (int b = a + APART; b < CELLS; b++) {
                far[0] += sum[a] * sum[b];
                far[1] += (double) count[a] * count[b];
            }
        }
        Arrays.fill(sum, 0);
        Arrays.fill(count, 0);
    }
}
