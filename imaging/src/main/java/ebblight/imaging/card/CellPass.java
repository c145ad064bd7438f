package ebblight.imaging.card;

import ebblight.imaging.OpenedPicture;
import java.util.Arrays;

/** One pass over the rows of a picture: cells, clipping, and pixels that stand out alone. */
final class CellPass {

    /** A sample this near the largest code holds no more light: JPEG moves clipped samples by a code or two. */
    private static final double FULL = 0.99;
    /** Share of clipped pixels from which the level of a cell is not known. */
    private static final double CLIPPED_CELL = 0.02;
    /** Light below this cannot be told from black in 8 bits: half a code at the foot of the sRGB curve. */
    private static final double BLACK = 2e-4;

    private static final double DARKEST_STOPS = -24;

    private final OpenedPicture picture;
    private final int size;
    private final int cellsAcross;
    private final int cellsDown;
    private final double[] sum;
    private final double[] across;
    private final double[] down;
    private final int[] clippedIn;
    private final int full;
    private final float[] linear;
    private long clipped;

    CellPass(OpenedPicture picture) {
        this.picture = picture;
        size = Cells.size(picture.width());
        cellsAcross = Math.max(1, picture.width() / size);
        cellsDown = Math.max(1, picture.height() / size);
        int n = cellsAcross * cellsDown;
        sum = new double[n];
        across = new double[n];
        down = new double[n];
        clippedIn = new int[n];
        full = (int) (FULL * ((1 << picture.bits()) - 1));
        linear = picture.linear();
    }

    /** Reads all rows; {@code lone} sees every row of codes too. */
    Cells run(LonePixels lone) {
        int w = picture.width();
        OpenedPicture.Rows rows = picture.rows();
        int[][][] codes = new int[LonePixels.ROWS][3][w];
        float[][] light = new float[3][w];
        for (int y = 0; y < picture.height(); y++) {
            int[][] row = codes[y % LonePixels.ROWS];
            rows.read(y, row[0], row[1], row[2]);
            luminance(row, light[y % 3], y);
            if (y >= 2) {
                detail(light[(y - 2) % 3], light[(y - 1) % 3], light[y % 3], y - 1);
            }
            lone.take(codes, y);
        }
        return cells();
    }

    double clippedFraction() {
        return clipped / ((double) picture.width() * picture.height());
    }

    private void luminance(int[][] row, float[] light, int y) {
        int mask = linear.length - 1; // spares the check of every index
        int cellRow = y / size < cellsDown ? y / size * cellsAcross : -1;
        for (int x = 0; x < light.length; x++) {
            int r = row[0][x];
            int g = row[1][x];
            int b = row[2][x];
            light[x] = 0.2126f * linear[r & mask] + 0.7152f * linear[g & mask] + 0.0722f * linear[b & mask];
            int cell = cellRow < 0 || x / size >= cellsAcross ? -1 : cellRow + x / size;
            if (cell >= 0) {
                sum[cell] += light[x];
            }
            if (r >= full || g >= full || b >= full) {
                clipped++;
                if (cell >= 0) {
                    clippedIn[cell]++;
                }
            }
        }
    }

    /** Squared differences over two pixels, so that what demosaicing leaves between neighbours counts little. */
    private void detail(float[] above, float[] here, float[] below, int y) {
        if (y / size >= cellsDown) {
            return;
        }
        int cellRow = y / size * cellsAcross;
        for (int cx = 0; cx < cellsAcross; cx++) {
            double a = 0;
            double d = 0;
            for (int x = Math.max(1, cx * size); x < Math.min(here.length - 1, (cx + 1) * size); x++) {
                float dx = here[x + 1] - here[x - 1];
                float dy = below[x] - above[x];
                a += dx * dx;
                d += dy * dy;
            }
            across[cellRow + cx] += a;
            down[cellRow + cx] += d;
        }
    }

    private Cells cells() {
        int n = sum.length;
        double pixels = (double) size * size;
        double[] mean = new double[n];
        for (int i = 0; i < n; i++) {
            mean[i] = sum[i] / pixels;
            across[i] /= pixels;
            down[i] /= pixels;
        }
        double noise = Math.min(noisePerLight(mean, across), noisePerLight(mean, down));
        short[] level = new short[n];
        short[] detailAcross = new short[n];
        short[] detailDown = new short[n];
        for (int i = 0; i < n; i++) {
            boolean known = clippedIn[i] <= CLIPPED_CELL * pixels && mean[i] > BLACK;
            level[i] = known ? code(Math.log(mean[i]) / Math.log(2)) : Cells.UNKNOWN;
            detailAcross[i] = contrast(across[i] - noise * mean[i], mean[i]);
            detailDown[i] = contrast(down[i] - noise * mean[i], mean[i]);
        }
        return new Cells(size, cellsAcross, cellsDown, level, detailAcross, detailDown);
    }

    private static short contrast(double energy, double mean) {
        double square = energy > 0 && mean > 0 ? energy / (mean * mean) : 0;
        return code(square > 0 ? Math.max(DARKEST_STOPS, 0.5 * Math.log(square) / Math.log(2)) : DARKEST_STOPS);
    }

    private static short code(double stops) {
        return (short) Math.round(Math.max(DARKEST_STOPS, stops) * Cells.STEPS);
    }

    /**
     * Variance of a difference against the light, from the smoothest cells: shot noise grows with the light (EMVA 1288,
     * from memory), so that one number serves for all of them.
     */
    private static double noisePerLight(double[] mean, double[] energy) {
        double[] ratios = new double[mean.length];
        int n = 0;
        for (int i = 0; i < mean.length; i++) {
            if (mean[i] > BLACK) {
                ratios[n++] = energy[i] / mean[i];
            }
        }
        if (n == 0) {
            return 0;
        }
        Arrays.sort(ratios, 0, n);
        return ratios[n / 20] * 1.2;
    }
}
