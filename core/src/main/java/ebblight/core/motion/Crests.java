package ebblight.core.motion;

import ebblight.core.numeric.Rounding;
import java.util.Arrays;

/**
 * How far along a row of the picture slow change still goes together: the crests of long waves span the view, a gust a
 * part of it, ripples and chop neither. Waves that go together across the view are few, so that a clip is a small
 * sample of them, and a clip of less than three of them cannot tell them from the floor of a wind sea.
 *
 * <p>Measured on differences of means of blocks that lie far apart in the clip, as for the variogram. Every row counts
 * by itself: near rows show few waves and much of each, and would outweigh the many waves further out.
 *
 * @param likeness mean product of two pixels of a row that lie 0.15 to 1 widths apart over the mean square, 0 to 1
 * @param slanting the same along the best of many slants over the row, the mean over rows that fill most of the view;
 *     crests of any direction raise it, ripples have 0.05 to 0.15 of it by chance; 0 where no row is long enough
 * @param patches variance of the slow change that two pixels a tenth of the width apart have in common, squared luminance
 * @param waves how many periods of what far pixels have in common along their slant the clip holds; 0 where
 *     nothing tells
 */
record Crests(double likeness, double slanting, double patches, double waves) {

    /** Nothing goes together, or nothing is known of it. */
    static final Crests NONE = new Crests(0, 0, 0, 0);

    /** Blocks are this share of the clip, and no longer than keeps waves of 6 s and more. */
    private static final double BLOCK = 0.25;

    private static final double LONGEST_BLOCK_SECONDS = 3;
    private static final int STARTS = 13;
    private static final double SEPARATION = 0.42;

    /** Cells across the picture; pixels three cells and more apart are far, two cells apart share a patch. */
    private static final int CELLS = 20;

    private static final int APART = 3;
    private static final int PATCH = 2;
    private static final int FEWEST_FRAMES = 8;

    /** A row with fewer pairs of far cells than this says nothing of slants: a row of thirteen full cells has 55. */
    private static final int FEWEST_PAIRS = 50;

    /** Waves of less than 2 s are chop. */
    private static final double FASTEST_HERTZ = 0.5;

    private static final int MOST_WAVES = 16;

    /**
     * The crests of some pixels.
     *
     * @param at where each pixel of the series lies in the picture, in order: row · width + column
     * @param width of the picture in pixels
     */
    static Crests of(PixelSeries series, int[] at, int width) {
        return series.frames() < FEWEST_FRAMES || width < CELLS ? NONE : new Meter(series, at, width).crests();
    }

    /** Goes through the picture row by row. */
    private static final class Meter {
        private final PixelSeries series;
        private final int[] at;
        private final int width;
        private final int frames;
        private final int block;
        private final int[] first;

        /** For each block the first of those far from it, and how many far pairs there are. */
        private final int[] firstFar;

        private final int farPairs;

        /** Sums over the pixels of a cell in every frame, {@code [frame][cell]}, then its means over the blocks. */
        private final double[][] cells;

        private final double[][] means;
        private final int[] count = new int[CELLS];
        private final double[] power;
        private final Pairs far = new Pairs();
        private final Pairs near = new Pairs();
        private final Pairs slanted = new Pairs();
        private final Slants slants = new Slants(CELLS, APART);

        /** Of every number of waves in the clip, {@code [waves − 1][frame]}. */
        private final double[][] cos;

        private final double[][] sin;

        Meter(PixelSeries series, int[] at, int width) {
            this.series = series;
            this.at = at;
            this.width = width;
            frames = series.frames();
            double spacing = series.spacingSeconds();
            block = Math.max(1, (int) Rounding.even(Math.min(BLOCK * frames, LONGEST_BLOCK_SECONDS / spacing)));
            int starts = Math.min(STARTS, frames - block + 1);
            first = new int[starts];
            for (int k = 0; k < starts; k++) {
                first[k] = (int) Rounding.even(k * (double) (frames - block) / (starts - 1));
            }
            firstFar = new int[starts];
            int pairs = 0;
            for (int i = 0; i < starts; i++) {
                int j = i + 1;
                while (j < starts && first[j] - first[i] < Math.max(block, SEPARATION * frames)) {
                    j++;
                }
                firstFar[i] = j;
                pairs += starts - j;
            }
            farPairs = pairs;
            cells = new double[frames][CELLS];
            means = new double[starts][CELLS];
            power = new double[Math.min(MOST_WAVES, Math.min(frames / 4, (int) (FASTEST_HERTZ * spacing * frames)))];
            cos = new double[power.length][frames];
            sin = new double[power.length][frames];
            for (int k = 0; k < power.length; k++) {
                for (int i = 0; i < frames; i++) {
                    double turn = 2 * Math.PI * (k + 1) * i / frames;
                    cos[k][i] = StrictMath.cos(turn);
                    sin[k][i] = StrictMath.sin(turn);
                }
            }
        }

        Crests crests() {
            double slow = 0;
            for (int from = 0, to; from < at.length; from = to) {
                to = from + 1;
                while (to < at.length && at[to] / width == at[from] / width) {
                    to++;
                }
                slow += row(from, to);
            }
            double waves = 0;
            double weight = 0;
            for (int k = 0; k < power.length; k++) {
                // A long exposure leaves of a wave what falls with the square of its frequency: slow ones count.
                double left = Math.max(0, power[k]) / (k + 1);
                waves += (k + 1) * left * left;
                weight += left * left;
            }
            return new Crests(
                    Math.min(1, far.likeness()),
                    Math.min(1, slanted.likeness()),
                    near.likeness() * slow / (2.0 * at.length),
                    weight > 0 ? waves / weight : 0);
        }

        /** Adds a row; the mean square of its slow change, summed over its pixels. */
        private double row(int from, int to) {
            Arrays.fill(count, 0);
            for (double[] frame : cells) {
                Arrays.fill(frame, 0);
            }
            double[] sums = squaresAndVariance(from, to);
            double square = sums[0];
            if (square <= 0) {
                return 0;
            }
            double[] pairs = new double[CELLS];
            for (int c = 0; c < CELLS; c++) {
                pairs[c] = count[c];
            }
            for (int k = 0; k < first.length; k++) {
                mean(first[k], means[k]);
            }
            double[] products = new double[CELLS];
            for (int i = 0; i < first.length; i++) {
                for (int j = firstFar[i]; j < first.length; j++) {
                    addProducts(means[i], means[j], products);
                }
            }
            double[] ofPairs = new double[CELLS];
            addProducts(pairs, new double[CELLS], ofPairs);
            far.add(far(products) / farPairs / square, far(ofPairs));
            near.add(products[PATCH] / farPairs / square, ofPairs[PATCH]);
            if (farCells() >= FEWEST_PAIRS) {
                slanted.add(slants.likeness(products, ofPairs) / farPairs / square, 1);
            }
            waves(sums[1]);
            return square * (to - from);
        }

        /** The means of the cells over the block of frames that begins with {@code from}. */
        private void mean(int from, double[] mean) {
            Arrays.fill(mean, 0);
            for (int i = from; i < from + block; i++) {
                double[] frame = cells[i];
                for (int c = 0; c < CELLS; c++) {
                    mean[c] += frame[c] / block;
                }
            }
        }

        /** Pairs of far cells of the row that hold pixels. */
        private int farCells() {
            int pairs = 0;
            for (int a = 0; a < CELLS; a++) {
                for (int b = a + APART; b < CELLS; b++) {
                    pairs += count[a] > 0 && count[b] > 0 ? 1 : 0;
                }
            }
            return pairs;
        }

        /**
         * Fills the cells.
         *
         * @return the mean square of the differences of far blocks of the row's pixels, and their variance summed over
         *     frames and pixels
         */
        private double[] squaresAndVariance(int from, int to) {
            double[] sums = new double[frames + 1];
            double square = 0;
            double variance = 0;
            for (int p = from; p < to; p++) {
                int cell = at[p] % width * CELLS / width;
                count[cell]++;
                for (int i = 0; i < frames; i++) {
                    double sample = series.sample(p, i);
                    sums[i + 1] = sums[i] + sample;
                    cells[i][cell] += sample;
                    variance += sample * sample;
                }
                variance -= sums[frames] * sums[frames] / frames;
                square += squares(sums);
            }
            return new double[] {farPairs > 0 ? square / (to - from) / farPairs / block / block : 0, variance};
        }

        /** Squared differences of all far blocks of a pixel; {@code sums} are those of its samples before each frame. */
        private double squares(double[] sums) {
            double square = 0;
            for (int i = 0; i < first.length; i++) {
                double block1 = sums[first[i] + block] - sums[first[i]];
                for (int j = firstFar[i]; j < first.length; j++) {
                    double d = block1 - sums[first[j] + block] + sums[first[j]];
                    square += d * d;
                }
            }
            return square;
        }

        /**
         * Adds the power that far cells have in common along the best slant, each cell less its straight trend, by waves
         * in the clip. Takes the trend out of the cells for good.
         */
        private void waves(double variance) {
            double middle = (frames - 1) / 2.0;
            double[] trend = new double[CELLS];
            for (int c = 0; c < CELLS; c++) {
                for (int i = 0; i < frames; i++) {
                    trend[c] += cells[i][c] * (i - middle) * 12 / (frames * (frames * (double) frames - 1));
                }
            }
            for (int i = 0; i < frames; i++) {
                for (int c = 0; c < CELLS; c++) {
                    cells[i][c] -= trend[c] * (i - middle);
                }
            }
            for (int k = 0; k < power.length; k++) {
                double[] even = turned(cos[k]);
                double[] odd = turned(sin[k]);
                double[] real = new double[CELLS];
                double[] imaginary = new double[CELLS];
                slants.add(even, even, 1, real);
                slants.add(odd, odd, 1, real);
                slants.add(even, odd, 1, imaginary);
                slants.add(odd, even, -1, imaginary);
                power[k] += slants.power(real, imaginary) / variance;
            }
        }

        /** Sum of every cell over time, each frame by its weight. */
        private double[] turned(double[] weight) {
            double[] sum = new double[CELLS];
            for (int i = 0; i < frames; i++) {
                double[] frame = cells[i];
                for (int c = 0; c < CELLS; c++) {
                    sum[c] += frame[c] * weight[i];
                }
            }
            return sum;
        }

        /** Adds for every distance from {@code PATCH} on the products of the cells of {@code a} less {@code b}. */
        private static void addProducts(double[] a, double[] b, double[] products) {
            double[] change = new double[a.length];
            for (int c = 0; c < a.length; c++) {
                change[c] = a[c] - b[c];
            }
            for (int d = PATCH; d < a.length; d++) {
                for (int c = 0; c + d < a.length; c++) {
                    products[d] += change[c] * change[c + d];
                }
            }
        }

        /** The products of far cells. */
        private static double far(double[] products) {
            double sum = 0;
            for (int d = APART; d < products.length; d++) {
                sum += products[d];
            }
            return sum;
        }
    }

    /** The mean likeness of pairs of pixels. */
    private static final class Pairs {
        private final double[] sum = new double[2];

        void add(double likeness, double pairs) {
            sum[0] += likeness;
            sum[1] += pairs;
        }

        /** 0 without pairs, and where they go against each other. */
        double likeness() {
            return sum[1] > 0 ? Math.max(0, sum[0] / sum[1]) : 0;
        }
    }
}
