package ebblight.core.numeric;

/**
 * Gaussian and box means of a plane, mirrored at the borders without repeating the edge sample. Every call may write
 * its result over its source. {@code workspace} holds {@code width · height} samples and is used up.
 */
public final class Blur {

    /** Up to here the Gaussian is summed tap by tap; beyond, four extended boxes are faster and as good. */
    private static final double LARGEST_DIRECT_SIGMA = 4;

    private static final int TAPS_IN_SIGMAS = 4;
    private static final int BOX_PASSES = 4;

    private Blur() {}

    /**
     * Gaussian mean with standard deviation {@code sigma} pixels (above 0). Up to 4 px: exact, cut off at 4 sigma.
     * Beyond: four extended boxes of the same variance (Gwosdek, Grewenig, Bruhn, Weickert 2011), whose peak lies 7 %
     * below the true one and whose values nowhere differ by more.
     */
    public static void gaussian(
            float[] source, float[] destination, float[] workspace, int width, int height, double sigma) {
        if (!(sigma > 0)) {
            throw new IllegalArgumentException("sigma must be above 0 px, was " + sigma);
        }
        if (sigma <= LARGEST_DIRECT_SIGMA) {
            double[] taps = taps(sigma);
            rowsByTaps(source, workspace, width, height, taps);
            columnsByTaps(workspace, destination, width, height, taps);
            return;
        }
        double variance = sigma * sigma / BOX_PASSES;
        int radius = (int) Math.floor((Math.sqrt(12 * variance + 1) - 1) / 2);
        double whole = 2.0 * radius + 1;
        double edge =
                (whole * (variance - radius * (radius + 1.0) / 3)) / (2 * ((radius + 1.0) * (radius + 1.0) - variance));
        boxes(source, destination, workspace, width, height, radius, edge, BOX_PASSES);
    }

    /** Mean over the square of {@code 2 radius + 1} pixels a side round each pixel. */
    public static void box(float[] source, float[] destination, float[] workspace, int width, int height, int radius) {
        if (radius < 0) {
            throw new IllegalArgumentException("radius must be 0 px or more, was " + radius);
        }
        boxes(source, destination, workspace, width, height, radius, 0, 1);
    }

    private static double[] taps(double sigma) {
        int radius = Math.max(1, (int) Rounding.up(TAPS_IN_SIGMAS * sigma));
        double[] taps = new double[radius + 1];
        double sum = 0;
        for (int i = 0; i <= radius; i++) {
            taps[i] = StrictMath.exp(-0.5 * i * i / (sigma * sigma));
            sum += i == 0 ? taps[i] : 2 * taps[i];
        }
        for (int i = 0; i <= radius; i++) {
            taps[i] /= sum;
        }
        return taps;
    }

    /** Index mirrored into 0 … n−1 without repeating the end (…2 1 0 1 2…). */
    static int mirrored(int i, int n) {
        if (n == 1) {
            return 0;
        }
        int period = 2 * (n - 1);
        int m = Math.floorMod(i, period);
        return m < n ? m : period - m;
    }

    private static void rowsByTaps(float[] source, float[] destination, int width, int height, double[] taps) {
        int radius = taps.length - 1;
        double[] line = new double[width + 2 * radius];
        double[] sum = new double[width];
        for (int y = 0; y < height; y++) {
            int row = y * width;
            for (int x = -radius; x < width + radius; x++) {
                line[x + radius] = source[row + (x >= 0 && x < width ? x : mirrored(x, width))];
            }
            for (int x = 0; x < width; x++) {
                sum[x] = taps[0] * line[x + radius];
            }
            // Tap by tap along the row: of this loop the compiler makes vectors.
            for (int k = 1; k <= radius; k++) {
                int before = radius - k;
                int after = radius + k;
                double tap = taps[k];
                for (int x = 0; x < width; x++) {
                    sum[x] += tap * (line[x + before] + line[x + after]);
                }
            }
            for (int x = 0; x < width; x++) {
                destination[row + x] = (float) sum[x];
            }
        }
    }

    private static void columnsByTaps(float[] source, float[] destination, int width, int height, double[] taps) {
        int radius = taps.length - 1;
        // Rows are widened once and kept while a sum still needs them: it makes no vectors of floats and doubles.
        double[][] rows = new double[Math.min(height, 2 * radius + 1)][width];
        int widened = 0;
        double[] sum = new double[width];
        for (int y = 0; y < height; y++) {
            for (; widened <= y + radius && widened < height; widened++) {
                double[] into = rows[widened % rows.length];
                for (int x = 0; x < width; x++) {
                    into[x] = source[widened * width + x];
                }
            }
            double[] here = rows[y % rows.length];
            for (int x = 0; x < width; x++) {
                sum[x] = taps[0] * here[x];
            }
            for (int k = 1; k <= radius; k++) {
                double[] above = rows[mirrored(y - k, height) % rows.length];
                double[] below = rows[mirrored(y + k, height) % rows.length];
                double tap = taps[k];
                for (int x = 0; x < width; x++) {
                    sum[x] += tap * (above[x] + below[x]);
                }
            }
            int row = y * width;
            for (int x = 0; x < width; x++) {
                destination[row + x] = (float) sum[x];
            }
        }
    }

    /** Boxes with a whole core and one further sample of weight {@code edge} at each end. */
    private static void boxes(
            float[] source,
            float[] destination,
            float[] workspace,
            int width,
            int height,
            int radius,
            double edge,
            int passes) {
        rowBoxes(source, workspace, width, height, radius, edge, passes);
        columnBoxes(workspace, destination, width, height, radius, edge, passes);
    }

    private static void rowBoxes(
            float[] source, float[] destination, int width, int height, int radius, double edge, int passes) {
        double[] from = new double[width];
        double[] to = new double[width];
        double[] line = new double[width + 2 * radius + 3];
        double scale = 1 / (2 * radius + 1 + 2 * edge);
        for (int y = 0; y < height; y++) {
            int row = y * width;
            for (int x = 0; x < width; x++) {
                from[x] = source[row + x];
            }
            for (int pass = 0; pass < passes; pass++) {
                lineBox(from, to, line, width, radius, edge, scale);
                double[] swap = from;
                from = to;
                to = swap;
            }
            for (int x = 0; x < width; x++) {
                destination[row + x] = (float) from[x];
            }
        }
    }

    /** {@code line} holds the mirrored samples from −radius−1 on. */
    private static void lineBox(
            double[] from, double[] to, double[] line, int n, int radius, double edge, double scale) {
        int pad = radius + 1;
        for (int i = -pad; i < n + pad; i++) {
            line[i + pad] = from[i >= 0 && i < n ? i : mirrored(i, n)];
        }
        double sum = 0;
        for (int i = 1; i <= 2 * radius + 1; i++) {
            sum += line[i];
        }
        for (int i = 0; i < n; i++) {
            to[i] = scale * (sum + edge * (line[i] + line[i + 2 * pad]));
            sum += line[i + 2 * pad] - line[i + 1];
        }
    }

    private static void columnBoxes(
            float[] source, float[] destination, int width, int height, int radius, double edge, int passes) {
        // Columns are taken in strips so that the walk down the picture stays in the cache.
        int strip = 16;
        double[] from = new double[height];
        double[] to = new double[height];
        double[] line = new double[height + 2 * radius + 3];
        double[] block = new double[strip * height];
        double scale = 1 / (2 * radius + 1 + 2 * edge);
        for (int left = 0; left < width; left += strip) {
            int columns = Math.min(strip, width - left);
            for (int y = 0; y < height; y++) {
                for (int c = 0; c < columns; c++) {
                    block[c * height + y] = source[y * width + left + c];
                }
            }
            for (int c = 0; c < columns; c++) {
                System.arraycopy(block, c * height, from, 0, height);
                for (int pass = 0; pass < passes; pass++) {
                    lineBox(from, to, line, height, radius, edge, scale);
                    double[] swap = from;
                    from = to;
                    to = swap;
                }
                System.arraycopy(from, 0, block, c * height, height);
            }
            for (int y = 0; y < height; y++) {
                for (int c = 0; c < columns; c++) {
                    destination[y * width + left + c] = (float) block[c * height + y];
                }
            }
        }
    }
}
