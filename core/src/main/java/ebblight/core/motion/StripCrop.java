package ebblight.core.motion;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Rounding;

/**
 * The patch of a part that is shown at a row of times, as on a darkroom's test strip: the place inside the part with
 * the most detail; in the sky, the most for its light, so that it is cloud and not the glow.
 *
 * @param left left edge as a fraction of the picture's width
 * @param top upper edge as a fraction of its height
 * @param width as a fraction of its width
 * @param height as a fraction of its height
 */
public record StripCrop(double left, double top, double width, double height) {

    /** A patch shows the part alone where at least this much of some patch belongs to it. */
    private static final double ALONE = 0.9;

    /** Keeps dark places of the sky from counting most. */
    private static final double DARK = 0.02;

    private static final int STEP = 4;

    /**
     * The best patch of a part.
     *
     * @param part index into the parts of {@code map}
     * @param picture any picture of the view, of the size of {@code map}
     * @param widthFraction width of the patch as a fraction of the picture's
     * @param aspect its width over its height, in pixels
     */
    public static StripCrop of(RegionMap map, int part, RgbPicture picture, double widthFraction, double aspect) {
        int w = map.width();
        int h = map.height();
        int cw = Math.max(2, Math.min(w, (int) Rounding.even(widthFraction * w)));
        int ch = Math.max(2, Math.min(h, (int) Rounding.even(cw / aspect)));
        double[] inside = new double[(w + 1) * (h + 1)];
        double[] detail = new double[(w + 1) * (h + 1)];
        float[] light = picture.green();
        boolean sky = map.parts().get(part).kind() == Kind.DRIFTING;
        for (int y = 0; y < h; y++) {
            double insideRow = 0;
            double detailRow = 0;
            for (int x = 0; x < w; x++) {
                int p = y * w + x;
                boolean here = map.partAt(p) == part;
                double gx = x + 1 < w ? light[p + 1] - (double) light[p] : 0;
                double gy = y + 1 < h ? light[p + w] - (double) light[p] : 0;
                insideRow += here ? 1 : 0;
                detailRow += here ? Math.sqrt(gx * gx + gy * gy) / (sky ? light[p] + DARK : 1) : 0;
                int q = (y + 1) * (w + 1) + x + 1;
                inside[q] = inside[q - w - 1] + insideRow;
                detail[q] = detail[q - w - 1] + detailRow;
            }
        }
        double most = 0;
        for (int y = 0; y + ch <= h; y += STEP) {
            for (int x = 0; x + cw <= w; x += STEP) {
                most = Math.max(most, sum(inside, w, x, y, cw, ch));
            }
        }
        double needed = Math.min(most, ALONE * cw * ch);
        double best = -1;
        int left = 0;
        int top = 0;
        for (int y = 0; y + ch <= h; y += STEP) {
            for (int x = 0; x + cw <= w; x += STEP) {
                double found = sum(detail, w, x, y, cw, ch);
                if (sum(inside, w, x, y, cw, ch) >= needed && found > best) {
                    best = found;
                    left = x;
                    top = y;
                }
            }
        }
        return new StripCrop((double) left / w, (double) top / h, (double) cw / w, (double) ch / h);
    }

    private static double sum(double[] table, int w, int x, int y, int cw, int ch) {
        int stride = w + 1;
        return table[(y + ch) * stride + x + cw]
                - table[y * stride + x + cw]
                - table[(y + ch) * stride + x]
                + table[y * stride + x];
    }
}
