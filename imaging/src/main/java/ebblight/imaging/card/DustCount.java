package ebblight.imaging.card;

/** How often each place of the sensor showed a spot, of how many frames that were smooth there. */
final class DustCount {

    private int width;
    private int height;
    private byte[][] smooth = new byte[0][];
    private byte[][] shown = new byte[0][];
    private short[][] views = new short[0][];
    private float[][] stops = new float[0][];

    /** Adds a frame of view number {@code view} (0 to 11); one of another size is left out. */
    void add(SpotMap map, int view) {
        int n = map.width() * map.height();
        if (smooth.length == 0) {
            width = map.width();
            height = map.height();
            smooth = new byte[SpotMap.RADII.length][n];
            shown = new byte[SpotMap.RADII.length][n];
            views = new short[SpotMap.RADII.length][n];
            stops = new float[SpotMap.RADII.length][n];
        }
        if (map.width() != width || map.height() != height) {
            return;
        }
        for (int s = 0; s < SpotMap.RADII.length; s++) {
            int scale = s;
            map.each(SpotMap.RADII[s], (place, darker, isSpot) -> {
                smooth[scale][place]++;
                if (isSpot) {
                    shown[scale][place]++;
                    views[scale][place] |= (short) (1 << view);
                    stops[scale][place] += (float) darker;
                }
            });
        }
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int smooth(int scale, int place) {
        return smooth[scale][place];
    }

    int shown(int scale, int place) {
        return shown[scale][place];
    }

    int views(int scale, int place) {
        return Integer.bitCount(views[scale][place] & 0xFFFF);
    }

    double meanStops(int scale, int place) {
        return stops[scale][place] / Math.max(1, shown[scale][place]);
    }
}
