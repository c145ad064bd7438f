package ebblight.core.motion;

/** Which places hang together, and how far places are from each other, on a grid of pixels. */
final class Flood {

    /** A step to a side and one to a corner; thirds of a pixel (Borgefors 1986, chamfer 3-4, from memory). */
    private static final double SIDE = 1;

    private static final double CORNER = 4.0 / 3;

    private Flood() {}

    /**
     * Spreads from seeds over the places that are open, to the four neighbours.
     *
     * @param out receives the open places reached, and the open seeds
     */
    static void from(boolean[] seeds, boolean[] open, int width, boolean[] out) {
        int[] queue = new int[seeds.length];
        boolean[] seen = new boolean[seeds.length];
        int end = 0;
        for (int p = 0; p < seeds.length; p++) {
            out[p] = false;
            if (seeds[p]) {
                seen[p] = true;
                queue[end++] = p;
            }
        }
        end = spread(queue, 0, end, seen, open, width);
        for (int at = 0; at < end; at++) {
            out[queue[at]] = open[queue[at]];
        }
    }

    /** The places that hang together with at least so many others. */
    static boolean[] large(boolean[] places, int width, int least) {
        int[] queue = new int[places.length];
        boolean[] seen = new boolean[places.length];
        boolean[] out = new boolean[places.length];
        int end = 0;
        for (int p = 0; p < places.length; p++) {
            if (places[p] && !seen[p]) {
                int first = end;
                seen[p] = true;
                queue[end++] = p;
                end = spread(queue, first, end, seen, places, width);
                for (int at = first; at < end; at++) {
                    out[queue[at]] = end - first >= least;
                }
            }
        }
        return out;
    }

    /** Works a queue off, adding open neighbours; where it ends then. */
    private static int spread(int[] queue, int from, int to, boolean[] seen, boolean[] open, int width) {
        int end = to;
        for (int at = from; at < end; at++) {
            int p = queue[at];
            int x = p % width;
            int[] beside = {x > 0 ? p - 1 : -1, x < width - 1 ? p + 1 : -1, p - width, p + width};
            for (int q : beside) {
                if (q >= 0 && q < seen.length && !seen[q] && open[q]) {
                    seen[q] = true;
                    queue[end++] = q;
                }
            }
        }
        return end;
    }

    /** Pixels from each place to the nearest one that is not 0; within 8 % of the straight way. */
    static double[] distances(byte[] places, int width) {
        int height = places.length / width;
        double[] away = new double[places.length];
        for (int p = 0; p < away.length; p++) {
            away[p] = places[p] == 0 ? places.length : 0;
        }
        for (int pass = 0; pass < 2; pass++) {
            int back = pass == 0 ? -1 : 1;
            for (int k = 0; k < away.length; k++) {
                int p = pass == 0 ? k : away.length - 1 - k;
                int x = p % width;
                int y = p / width;
                boolean side = x + back >= 0 && x + back < width;
                boolean row = y + back >= 0 && y + back < height;
                boolean far = x - back >= 0 && x - back < width;
                double least = away[p];
                least = side ? Math.min(least, away[p + back] + SIDE) : least;
                least = row ? Math.min(least, away[p + back * width] + SIDE) : least;
                least = row && side ? Math.min(least, away[p + back * width + back] + CORNER) : least;
                least = row && far ? Math.min(least, away[p + back * width - back] + CORNER) : least;
                away[p] = least;
            }
        }
        return away;
    }
}
