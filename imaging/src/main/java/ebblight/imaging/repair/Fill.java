package ebblight.imaging.repair;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;

/**
 * A value for a pixel from its neighbours that are not faulty themselves: along the direction in which the two sides
 * differ least, so that edges stay; where both sides of no direction are sound, the median of what is.
 */
final class Fill {

    private static final int[][] DIRECTIONS = {{1, 0}, {0, 1}, {1, 1}, {1, -1}};
    private static final int REACH = 3;

    private Fill() {}

    /** Values of all three colours for pixel {@code x, y}; false where nothing sound is near. */
    static boolean into(RgbPicture picture, boolean[] faulty, int x, int y, float[] out) {
        for (int reach = 1; reach <= REACH; reach++) {
            if (along(picture, faulty, x, y, reach, out)) {
                return true;
            }
        }
        return median(picture, faulty, x, y, out);
    }

    private static boolean along(RgbPicture picture, boolean[] faulty, int x, int y, int reach, float[] out) {
        double least = Double.POSITIVE_INFINITY;
        for (int[] d : DIRECTIONS) {
            int one = at(picture, faulty, x - reach * d[0], y - reach * d[1]);
            int other = at(picture, faulty, x + reach * d[0], y + reach * d[1]);
            if (one >= 0 && other >= 0) {
                double difference = 0;
                for (int c = 0; c < 3; c++) {
                    difference += Math.abs(picture.plane(c)[one] - picture.plane(c)[other]);
                }
                if (difference < least) {
                    least = difference;
                    for (int c = 0; c < 3; c++) {
                        out[c] = (picture.plane(c)[one] + picture.plane(c)[other]) / 2;
                    }
                }
            }
        }
        return least < Double.POSITIVE_INFINITY;
    }

    private static boolean median(RgbPicture picture, boolean[] faulty, int x, int y, float[] out) {
        float[] near = new float[(2 * REACH + 1) * (2 * REACH + 1)];
        for (int c = 0; c < 3; c++) {
            int n = 0;
            for (int v = y - REACH; v <= y + REACH; v++) {
                for (int u = x - REACH; u <= x + REACH; u++) {
                    int i = at(picture, faulty, u, v);
                    if (i >= 0) {
                        near[n++] = picture.plane(c)[i];
                    }
                }
            }
            if (n == 0) {
                return false;
            }
            out[c] = (float) Quantiles.median(near, n);
        }
        return true;
    }

    private static int at(RgbPicture picture, boolean[] faulty, int x, int y) {
        boolean inside = x >= 0 && y >= 0 && x < picture.width() && y < picture.height();
        int i = y * picture.width() + x;
        return inside && !faulty[i] ? i : -1;
    }
}
