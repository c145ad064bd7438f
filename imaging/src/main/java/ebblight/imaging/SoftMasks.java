package ebblight.imaging;

import ebblight.core.numeric.Guided;
import ebblight.core.numeric.Work;
import java.util.List;

/**
 * Where each layer of a blend shows, at full size: shares that sum to 1, told at survey size and led along the edges of
 * the picture by the guided filter on a reduced copy (He and Sun 2015). Where nothing guides them they run softly into
 * each other.
 */
final class SoftMasks {

    /** Width of the reduced copy, in pixels. */
    private static final int GUIDE_WIDTH = 1440;
    /** Radius of the filter's boxes, as a share of the width: how far survey edges may lie from those of the picture. */
    private static final double RADIUS = 5.0 / 480;
    /** A step in the square root of the light of 2 % counts as an edge. */
    private static final double EPSILON = 0.02 * 0.02;

    private final int width;
    private final int height;
    private final int guideWidth;
    private final int guideHeight;
    private final float[] guide;
    private final float[][] slope;
    private final float[][] offset;

    private SoftMasks(int width, int height, float[] guide, int layers) {
        this.width = width;
        this.height = height;
        this.guide = guide;
        guideWidth = Math.min(width, GUIDE_WIDTH);
        guideHeight = Math.max(1, (int) Math.round((double) height * guideWidth / width));
        slope = new float[layers][guideWidth * guideHeight];
        offset = new float[layers][guideWidth * guideHeight];
    }

    /**
     * Masks of layers.
     *
     * @param guide square root of the luminance of the whole picture
     */
    static SoftMasks of(List<BlendLayer> layers, ShareGrid grid, float[] guide, int width, int height, Work work) {
        SoftMasks masks = new SoftMasks(width, height, guide, layers.size());
        int w = masks.guideWidth;
        int h = masks.guideHeight;
        float[] small = new Reduced(width, height, w, h).of(p -> guide[p], work);
        int radius = Math.max(2, (int) Math.round(RADIUS * w));
        work.forEach(layers.size(), k -> {
            float[] share = grid.enlarged(layers.get(k).share(), w, h);
            Guided.lines(share, small, masks.slope[k], masks.offset[k], w, h, radius, EPSILON);
        });
        return masks;
    }

    /** The masks of row {@code y}: one row a layer. */
    void row(int y, float[][] out) {
        double v = (y + 0.5) * guideHeight / height - 0.5;
        for (int x = 0; x < width; x++) {
            double u = (x + 0.5) * guideWidth / width - 0.5;
            double g = guide[y * width + x];
            double sum = 0;
            for (int k = 0; k < out.length; k++) {
                double m = ShareGrid.at(slope[k], guideWidth, guideHeight, u, v) * g
                        + ShareGrid.at(offset[k], guideWidth, guideHeight, u, v);
                double clear = Math.max(0, Math.min(1, m));
                // squared, so that a layer with little claim gives way
                double claim = clear * clear;
                out[k][x] = (float) claim;
                sum += claim;
            }
            for (float[] layer : out) {
                layer[x] = sum > 0 ? (float) (layer[x] / sum) : 1f / out.length;
            }
        }
    }
}
