package ebblight.core.motion;

/**
 * The mean of a value over pixels, with its error from how the mean differs between the cells of a coarse grid:
 * neighbouring pixels are alike, so their number says little.
 */
final class CellMean {

    private static final int CELLS = 8;

    private final int width;
    private final int height;
    private final double[] sums = new double[CELLS * CELLS];
    private final double[] counts = new double[CELLS * CELLS];

    CellMean(int width, int height) {
        this.width = width;
        this.height = height;
    }

    void add(int pixel, double value) {
        int row = pixel / width;
        int cell = row * CELLS / height * CELLS + (pixel - row * width) * CELLS / width;
        sums[cell] += value;
        counts[cell]++;
    }

    double count() {
        return sum(counts);
    }

    /** 0 without pixels. */
    double mean() {
        double count = count();
        return count > 0 ? sum(sums) / count : 0;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        return sum;
    }

    /** Standard error of the mean; 0 with fewer than two cells that hold pixels. */
    double error() {
        double mean = mean();
        double scatter = 0;
        int cells = 0;
        for (int c = 0; c < sums.length; c++) {
            if (counts[c] > 0) {
                double d = sums[c] - mean * counts[c];
                scatter += d * d;
                cells++;
            }
        }
        return cells < 2 ? 0 : Math.sqrt(scatter) / count() * Math.sqrt(cells / (cells - 1.0));
    }
}
