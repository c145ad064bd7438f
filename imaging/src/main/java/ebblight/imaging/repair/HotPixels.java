package ebblight.imaging.repair;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** Replaces hot pixels: places that are known to be hot and that stand out of the picture itself. */
final class HotPixels {

    /** Noises of its own surroundings by which a pixel must stand out to be replaced. */
    private static final double STANDS_OUT = 4;
    /** Share of what the dark frames promise that must be seen. */
    private static final double LEAST_OF_PROMISED = 0.3;

    private static final double MAD = 1.4826;

    private HotPixels() {}

    /** Pixels that dark frames show as hot. */
    static boolean[] inDark(DarkLight dark) {
        boolean[] hot = new boolean[dark.light().width() * dark.light().height()];
        for (int i = 0; i < hot.length; i++) {
            hot[i] = dark.hot(i);
        }
        return hot;
    }

    /** Light that a pixel should have too much, in the colour where it is most; not a number when only places are known. */
    interface Promise {
        double excess(int pixel);
    }

    static Change repair(RgbPicture picture, boolean[] hot, Promise promise, String how, Mask mask, Work work) {
        int w = picture.width();
        int h = picture.height();
        int[] changed = new int[h];
        int[] left = new int[h];
        boolean[] faulty = new boolean[hot.length];
        float[][] filled = new float[h][];
        // What is known to be hot is never a source for its neighbours, replaced or not.
        work.forEach(h, y -> {
            float[] near = new float[24];
            for (int x = 0; x < w; x++) {
                int i = y * w + x;
                if (hot[i]) {
                    faulty[i] = standsOut(picture, x, y, promise.excess(i), near);
                    changed[y] += faulty[i] ? 1 : 0;
                    left[y] += faulty[i] ? 0 : 1;
                }
            }
        });
        work.forEach(h, y -> {
            float[] row = new float[3 * changed[y]];
            float[] value = new float[3];
            int n = 0;
            for (int x = 0; x < w && n < row.length; x++) {
                if (faulty[y * w + x]) {
                    boolean found = Fill.into(picture, hot, x, y, value);
                    faulty[y * w + x] = found;
                    if (found) {
                        System.arraycopy(value, 0, row, n, 3);
                        n += 3;
                    }
                }
            }
            filled[y] = row;
        });
        int all = 0;
        int kept = 0;
        for (int y = 0; y < h; y++) {
            int n = 0;
            for (int x = 0; x < w && n < filled[y].length; x++) {
                int i = y * w + x;
                if (faulty[i]) {
                    for (int c = 0; c < 3; c++) {
                        picture.plane(c)[i] = filled[y][n++];
                    }
                    mask.replaced(i);
                    all++;
                }
            }
            kept += left[y];
        }
        return new Change(
                "hotPixels",
                all,
                kept,
                all + " hot pixels replaced from their neighbours, by " + how + "; " + kept
                        + " left alone that do not show");
    }

    private static boolean standsOut(RgbPicture picture, int x, int y, double promised, float[] near) {
        for (int c = 0; c < 3; c++) {
            float[] plane = picture.plane(c);
            double middle = Lone.round(plane, picture.width(), picture.height(), x, y, near);
            double above = plane[y * picture.width() + x] - middle;
            for (int k = 0; k < near.length; k++) {
                near[k] = (float) Math.abs(near[k] - middle);
            }
            double noise = MAD * Quantiles.median(near, near.length);
            boolean asPromised = Double.isNaN(promised) || above > LEAST_OF_PROMISED * promised;
            if (above > STANDS_OUT * noise && above > 0 && asPromised) {
                return true;
            }
        }
        return false;
    }
}
