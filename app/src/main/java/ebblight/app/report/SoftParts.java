package ebblight.app.report;

import com.grack.nanojson.JsonArray;
import ebblight.core.numeric.Blur;
import ebblight.core.numeric.RgbPicture;
import java.util.List;

/** A picture with its parts tinted, one running softly into the next. */
final class SoftParts {

    private static final List<String> KINDS = List.of("fixed", "drifting", "flowing", "swaying");

    /** Tints in linear light: none, sand, sea, moss. */
    private static final double[][] TINTS = {{0, 0, 0}, {0.80, 0.47, 0.12}, {0.02, 0.30, 0.62}, {0.22, 0.50, 0.04}};

    private static final double STRENGTH = 0.36;
    private static final double EDGE_PIXELS = 2.5;

    private SoftParts() {}

    /**
     * The picture in its tints.
     *
     * @param picture linear light
     * @param map index of the region at every pixel of it
     * @param regions of {@code measure/1}
     */
    static RgbPicture tinted(RgbPicture picture, byte[] map, JsonArray regions) {
        int w = picture.width();
        int h = picture.height();
        RgbPicture out = RgbPicture.black(w, h);
        float[][] share = new float[KINDS.size()][w * h];
        for (int p = 0; p < w * h; p++) {
            share[KINDS.indexOf(regions.getObject(map[p] & 0xFF).getString("kind"))][p] = 1;
        }
        float[] scratch = new float[w * h];
        for (float[] one : share) {
            Blur.gaussian(one, one, scratch, w, h, EDGE_PIXELS);
        }
        for (int p = 0; p < w * h; p++) {
            double light = 0.2126 * picture.red()[p] + 0.7152 * picture.green()[p] + 0.0722 * picture.blue()[p];
            for (int c = 0; c < 3; c++) {
                double v = picture.plane(c)[p];
                for (int k = 1; k < share.length; k++) {
                    v += STRENGTH * share[k][p] * (TINTS[k][c] * (0.12 + 1.4 * light) - picture.plane(c)[p]);
                }
                out.plane(c)[p] = (float) Math.max(0, v);
            }
        }
        return out;
    }
}
