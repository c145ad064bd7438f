package ebblight.core.motion;

/**
 * Water so far out that its ripples are lost in a pixel: it seems to stand. What lies right under the horizon and looks
 * as its row does to either side is water all the same, until something stands out of it; sand or a quay nearer by is no
 * part of it, as other water lies between.
 */
final class FarWater {

    /** Under the horizon by this share of the height it begins. */
    private static final double BEGINS = 0.06;

    private static final int SIDE = 3;
    private static final double LOOKS_ALIKE = 0.05;
    private static final double DARK = 0.005;

    /** Logits that a stroke lifted by more than this were called fixed by hand. */
    private static final double BY_HAND = 0.5;

    private FarWater() {}

    /**
     * The shares in which what was fixed there flows.
     *
     * @param fixed logits of what is fixed, as strokes lifted them
     * @param plain the same without strokes
     */
    static SoftRegions apply(SoftRegions regions, Horizon line, float[] median, float[] fixed, float[] plain) {
        int w = regions.width();
        int h = regions.height();
        byte[] labels = regions.labels();
        byte[] even = new byte[labels.length];
        for (int p = 0; p < even.length; p++) {
            int row = p / w;
            boolean stands = labels[p] == Kind.FIXED.column() && fixed[p] - (double) plain[p] < BY_HAND;
            even[p] = (byte) (stands && row > line.at(p % w, w) && looksAsItsRow(median, p, w) ? 1 : 0);
        }
        Areas areas = Areas.of(even, w, h);
        boolean[] far = new boolean[areas.count()];
        for (int p = 0; p < even.length; p++) {
            int row = p / w;
            far[areas.at(p)] |= even[p] > 0 && row <= line.at(p % w, w) + BEGINS * h;
        }
        float[][] share = new float[RegionModel.KINDS][];
        for (int c = 0; c < share.length; c++) {
            share[c] = regions.all()[c].clone();
        }
        float[] still = share[Kind.FIXED.column()];
        float[] water = share[Kind.FLOWING.column()];
        for (int p = 0; p < even.length; p++) {
            if (far[areas.at(p)]) {
                water[p] += still[p];
                still[p] = 0;
            }
        }
        return new SoftRegions(w, h, share);
    }

    private static boolean looksAsItsRow(float[] median, int p, int w) {
        int x = p % w;
        boolean alike = true;
        for (int q = p - Math.min(SIDE, x); q <= p + Math.min(SIDE, w - 1 - x); q++) {
            alike &= Math.abs((double) median[q] - median[p]) <= LOOKS_ALIKE * (median[p] + DARK);
        }
        return alike;
    }
}
