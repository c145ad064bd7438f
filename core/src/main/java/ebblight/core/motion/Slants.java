package ebblight.core.motion;

/**
 * Crests that cross a row at a slant: along the row they come later by the same phase from cell to cell. What far cells
 * have in common is summed after turning it back by every phase of a list, and the largest sum counts. Without crests the
 * largest of many sums is above 0 too, which limits have to allow for.
 */
final class Slants {

    private static final int STEPS = 8;

    /** At a quarter turn from cell to cell a wave is four cells long: shorter ones are chop. */
    private static final double MOST_RADIANS = Math.PI / 2;

    private final int cells;
    private final int apart;

    /** cos and sin of the phase over a distance, {@code [phase][distance]}, phases from 0 up. */
    private final double[][] cos;

    private final double[][] sin;

    /**
     * Slants over a row.
     *
     * @param cells in the row
     * @param apart cells this far apart and further are far
     */
    Slants(int cells, int apart) {
        this.cells = cells;
        this.apart = apart;
        cos = new double[STEPS + 1][cells];
        sin = new double[STEPS + 1][cells];
        for (int k = 0; k <= STEPS; k++) {
            for (int d = 0; d < cells; d++) {
                double phase = MOST_RADIANS * k / STEPS * d;
                cos[k][d] = StrictMath.cos(phase);
                sin[k][d] = StrictMath.sin(phase);
            }
        }
    }

    /** Adds to {@code sums} for every distance the products of the cells of {@code a} with those of {@code b} beyond. */
    void add(double[] a, double[] b, double sign, double[] sums) {
        for (int d = apart; d < cells; d++) {
            for (int c = 0; c + d < cells; c++) {
                sums[d] += sign * a[c] * b[c + d];
            }
        }
    }

    /**
     * Likeness of far cells along the best slant, for waves that pass at all phases: 1 where all change goes together.
     *
     * @param products sums of products by distance
     * @param pairs the same of the numbers of pixels, with some pixel in far cells
     */
    double likeness(double[] products, double[] pairs) {
        double best = 0;
        for (double[] turned : cos) {
            double sum = 0;
            double of = 0;
            for (int d = apart; d < cells; d++) {
                sum += products[d] * turned[d];
                of += pairs[d] * turned[d] * turned[d];
            }
            best = Math.max(best, sum / of);
        }
        return best;
    }

    /** The largest sum of the products of far Fourier coefficients of one frequency, turned back along a slant. */
    double power(double[] real, double[] imaginary) {
        double best = Double.NEGATIVE_INFINITY;
        for (int k = 0; k <= STEPS; k++) {
            double even = 0;
            double odd = 0;
            for (int d = apart; d < cells; d++) {
                even += real[d] * cos[k][d];
                odd += imaginary[d] * sin[k][d];
            }
            best = Math.max(best, even + Math.abs(odd));
        }
        return best;
    }
}
