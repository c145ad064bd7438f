package ebblight.core.motion;

/** Where in the picture each part can be pointed at: its pixel farthest from every other part and from the border. */
public final class PartPlaces {

    private PartPlaces() {}

    /**
     * Column and row of one pixel a part, in the order of {@link RegionMap#parts()}; {−1, −1} for a part without
     * pixels. Distance counts steps along rows and columns.
     */
    public static int[][] of(RegionMap map) {
        int w = map.width();
        int h = map.height();
        int[] inside = new int[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int p = y * w + x;
                int left = x > 0 && same(map, p, p - 1) ? inside[p - 1] : 0;
                int up = y > 0 && same(map, p, p - w) ? inside[p - w] : 0;
                inside[p] = 1 + Math.min(left, up);
            }
        }
        int[][] best = new int[map.parts().size()][];
        int[] depth = new int[best.length];
        for (int k = 0; k < best.length; k++) {
            best[k] = new int[] {-1, -1};
        }
        for (int y = h - 1; y >= 0; y--) {
            for (int x = w - 1; x >= 0; x--) {
                int p = y * w + x;
                int right = x < w - 1 && same(map, p, p + 1) ? inside[p + 1] : 0;
                int down = y < h - 1 && same(map, p, p + w) ? inside[p + w] : 0;
                inside[p] = Math.min(inside[p], 1 + Math.min(right, down));
                int part = map.partAt(p);
                if (inside[p] > depth[part]) {
                    depth[part] = inside[p];
                    best[part] = new int[] {x, y};
                }
            }
        }
        return best;
    }

    private static boolean same(RegionMap map, int p, int q) {
        return map.partAt(p) == map.partAt(q);
    }
}
