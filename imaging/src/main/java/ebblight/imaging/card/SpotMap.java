package ebblight.imaging.card;

import ebblight.core.numeric.Quantiles;
import ebblight.imaging.OpenedPicture;
import java.util.Arrays;

/** How much darker each place of a frame is than a ring round it, for spots of several sizes. */
final class SpotMap {

    /** Radii of spots in pixels of the map. */
    static final int[] RADII = {2, 4, 7};

    private static final int ACROSS = 720;
    private static final int RING = 16;
    /** The ring lies this many radii out. */
    private static final double OUT = 2.2;
    /** Stops by which a spot is darker than the ring at least. */
    private static final double LEAST_STOPS = 0.03;
    /** And than its darkest place, as a share of that: round, not an edge of something. */
    private static final double ROUND = 0.35;
    /** Spread of the ring from which a place counts as not smooth, stops from the second lowest to the second highest. */
    private static final double SMOOTH_STOPS = 0.2;

    private final int width;
    private final int height;
    private final double[] level;

    /** What is seen of one place that is smooth round it. */
    interface Place {
        void is(int place, double darkerStops, boolean spot);
    }

    SpotMap(OpenedPicture picture) {
        int size = Math.max(1, picture.width() / ACROSS);
        width = picture.width() / size;
        height = picture.height() / size;
        level = new double[width * height];
        float[] linear = picture.linear();
        int[][] row = new int[3][picture.width()];
        double[] sums = new double[width];
        OpenedPicture.Rows rows = picture.rows();
        for (int y = 0; y < height; y++) {
            Arrays.fill(sums, 0);
            for (int j = 0; j < size; j++) {
                rows.read(y * size + j, row[0], row[1], row[2]);
                for (int x = 0; x < width * size; x++) {
                    sums[x / size] += linear[row[1][x]];
                }
            }
            for (int x = 0; x < width; x++) {
                level[y * width + x] = Math.log(Math.max(1e-5, sums[x] / (size * size))) / Math.log(2);
            }
        }
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Tells of every place that is smooth round it, for spots of a radius. */
    void each(int radius, Place told) {
        int inner = Math.max(1, radius / 2);
        double[] mean = HighPass.boxSums(level, width, height, inner);
        double area = (2 * inner + 1) * (2 * inner + 1.0);
        int reach = (int) Math.ceil(OUT * radius) + inner;
        int[] offset = new int[RING];
        for (int k = 0; k < RING; k++) {
            offset[k] = (int) Math.rint(OUT * radius * Math.sin(2 * Math.PI * k / RING)) * width
                    + (int) Math.rint(OUT * radius * Math.cos(2 * Math.PI * k / RING));
        }
        double[] ring = new double[RING];
        for (int y = reach; y < height - reach; y++) {
            for (int x = reach; x < width - reach; x++) {
                int p = y * width + x;
                for (int k = 0; k < RING; k++) {
                    ring[k] = mean[p + offset[k]] / area;
                }
                double middle = Quantiles.median(ring, RING);
                Arrays.sort(ring);
                if (ring[RING - 2] - ring[1] < SMOOTH_STOPS) {
                    double darker = middle - mean[p] / area;
                    double under = ring[0] - mean[p] / area;
                    told.is(p, darker, darker > LEAST_STOPS && under > ROUND * darker);
                }
            }
        }
    }
}
