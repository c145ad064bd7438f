package ebblight.imaging.card;

import ebblight.imaging.OpenedPicture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Pixels that stand out of all round them in one colour: hot ones, but stars and spray too, which is for the frames of
 * other exposures to tell.
 */
final class LonePixels {

    /** Rows of codes that are looked at together. */
    static final int ROWS = 5;

    private static final int MOST = 20_000;
    /** Share of the largest code by which a lone pixel is brighter than all round it. */
    private static final double LEAST = 0.08;
    /** And how many times the grain. */
    private static final double GRAINS = 7;

    private static final double SAMPLED_ROWS = 64;

    private final int width;
    private final int height;
    private final int least;
    private final List<Integer> found = new ArrayList<>();

    LonePixels(OpenedPicture picture) {
        width = picture.width();
        height = picture.height();
        int largest = (1 << picture.bits()) - 1;
        least = (int) Math.max(LEAST * largest, GRAINS * grain(picture));
    }

    /** Standard deviation of the grain in codes, from second differences of some rows: the median of their sizes. */
    private static double grain(OpenedPicture picture) {
        int w = picture.width();
        int[][] row = new int[3][w];
        OpenedPicture.Rows rows = picture.rows();
        int step = (int) Math.max(1, picture.height() / SAMPLED_ROWS);
        int[] sizes = new int[(picture.height() / step + 1) * (w / 2 + 1)];
        int n = 0;
        for (int y = 0; y < picture.height(); y += step) {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 2; x + 2 < w; x += 2) {
                sizes[n++] = Math.abs(2 * row[1][x] - row[1][x - 2] - row[1][x + 2]);
            }
        }
        if (n == 0) {
            return 0;
        }
        Arrays.sort(sizes, 0, n);
        return sizes[n / 2] / (0.6745 * Math.sqrt(6)); // of a normal distribution; variances 4 + 1 + 1
    }

    /** Row {@code y} has come into {@code codes[y % ROWS]}: the row two above it has all its neighbours now. */
    void take(int[][][] codes, int y) {
        int middle = y - 2;
        if (middle < 2) {
            return;
        }
        int[] row = new int[0];
        for (int x = 2; x + 2 < width && found.size() < MOST; x++) {
            for (int c = 0; c < 3; c++) {
                row = codes[middle % ROWS][c];
                int v = row[x];
                if (v - Math.max(row[x - 2], row[x + 2]) > least && alone(codes, c, x, middle, v)) {
                    found.add(middle * width + x);
                    break;
                }
            }
        }
    }

    private boolean alone(int[][][] codes, int c, int x, int y, int v) {
        int high = Integer.MIN_VALUE;
        int low = Integer.MAX_VALUE;
        for (int j = -2; j <= 2; j++) {
            int[] row = codes[(y + j) % ROWS][c];
            boolean edge = j == -2 || j == 2;
            for (int i = -2; i <= 2; i++) {
                int near = row[x + i];
                if (edge || i == -2 || i == 2) {
                    high = Math.max(high, near);
                    low = Math.min(low, near);
                } else if (near > v || (near == v && (j < 0 || (j == 0 && i < 0)))) {
                    return false;
                }
            }
        }
        return v - high > least && high - low < 0.7 * (v - high);
    }

    /** Places of the lone pixels, row times width plus column, in order. */
    int[] found() {
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    int height() {
        return height;
    }
}
