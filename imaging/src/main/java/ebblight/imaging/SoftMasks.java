package ebblight.imaging;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Guided;
import ebblight.core.numeric.Work;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where each part of a picture shows, at full size: shares that sum to 1, told at survey size and led along the edges of
 * the picture by the guided filter on a reduced copy (He and Sun 2015). Where nothing guides them they run softly into
 * each other; an edge that is pulled wider runs over that width whatever the picture shows.
 */
public final class SoftMasks {

    /** Width of the reduced copy, in pixels. */
    private static final int GUIDE_WIDTH = 1440;
    /** Radius of the filter's boxes, as a share of the width: how far survey edges may lie from those of the picture. */
    private static final double RADIUS = 5.0 / 480;
    /** A step in the square root of the light of 2 % counts as an edge. */
    private static final double EPSILON = 0.02 * 0.02;
    /** Standard deviations of a normal distribution from 10 to 90 % of a step that it softens. */
    private static final double STEP_SIGMAS = 2.563;

    private final int width;
    private final int height;
    private final int guideWidth;
    private final int guideHeight;
    private final float[] guide;
    private final float[][] slope;
    private final float[][] offset;
    /** For each part with a pulled edge all shares, softened by it; empty for the others. */
    private final float[][][] softened;

    /**
     * A part and where it lies.
     *
     * @param share 0 to 1, at survey size; the shares of all parts sum to 1
     * @param edge width over which it runs into its neighbours from 10 to 90 %, as a fraction of the picture's width; 0:
     *     as the picture's own edges are
     */
    public record Part(float[] share, double edge) {}

    private SoftMasks(int width, int height, float[] guide, int layers) {
        softened = new float[layers][0][];
        this.width = width;
        this.height = height;
        this.guide = guide;
        guideWidth = Math.min(width, GUIDE_WIDTH);
        guideHeight = Math.max(1, (int) Math.round((double) height * guideWidth / width));
        slope = new float[layers][guideWidth * guideHeight];
        offset = new float[layers][guideWidth * guideHeight];
    }

    /**
     * Masks of parts.
     *
     * @param guide square root of the luminance of the whole picture
     */
    public static SoftMasks of(List<Part> parts, ShareGrid grid, float[] guide, int width, int height, Work work) {
        SoftMasks masks = new SoftMasks(width, height, guide, parts.size());
        int w = masks.guideWidth;
        int h = masks.guideHeight;
        float[] small = new Reduced(width, height, w, h).of(p -> guide[p], work);
        int radius = Math.max(2, (int) Math.round(RADIUS * w));
        work.forEach(parts.size(), k -> {
            float[] share = grid.enlarged(parts.get(k).share(), w, h);
            Guided.lines(share, small, masks.slope[k], masks.offset[k], w, h, radius, EPSILON);
        });
        if (parts.stream().anyMatch(p -> p.edge() > 0)) {
            masks.soften(parts, small, work);
        }
        return masks;
    }

    private void soften(List<Part> parts, float[] small, Work work) {
        float[][] clear = new float[parts.size()][guideWidth * guideHeight];
        for (int p = 0; p < small.length; p++) {
            double sum = 0;
            for (int k = 0; k < clear.length; k++) {
                double claim = claim((double) slope[k][p] * small[p] + offset[k][p]);
                clear[k][p] = (float) claim;
                sum += claim;
            }
            for (float[] part : clear) {
                part[p] = sum > 0 ? (float) (part[p] / sum) : 1f / clear.length;
            }
        }
        int[] pulled = IntStream.range(0, clear.length)
                .filter(k -> parts.get(k).edge() > 0)
                .toArray();
        for (int k : pulled) {
            softened[k] = new float[clear.length][clear[0].length];
        }
        work.forEach(pulled.length * clear.length, i -> {
            int k = pulled[i / clear.length];
            int of = i % clear.length;
            double sigma = parts.get(k).edge() * guideWidth / STEP_SIGMAS;
            Blur.gaussian(clear[of], softened[k][of], new float[small.length], guideWidth, guideHeight, sigma);
        });
    }

    /** What a share stands for beside others: squared, so that a part with little claim gives way. */
    private static double claim(double share) {
        double within = Math.max(0, Math.min(1, share));
        return within * within;
    }

    /** Where the softened share lies between none and all it is taken; outside and inside nothing changes. */
    private void pull(float[][] soft, int part, float[][] out, int x, double u, double v) {
        double own = ShareGrid.at(soft[part], guideWidth, guideHeight, u, v);
        double off = 2 * own - 1;
        double squared = off * off;
        double taken = 1 - squared * squared * squared * squared;
        for (int k = 0; taken > 0 && k < out.length; k++) {
            double there = ShareGrid.at(soft[k], guideWidth, guideHeight, u, v);
            out[k][x] += (float) (taken * (there - out[k][x]));
        }
    }

    /** The masks of row {@code y}: one row a part. */
    public void row(int y, float[][] out) {
        double v = (y + 0.5) * guideHeight / height - 0.5;
        for (int x = 0; x < width; x++) {
            double u = (x + 0.5) * guideWidth / width - 0.5;
            double g = guide[y * width + x];
            double sum = 0;
            for (int k = 0; k < out.length; k++) {
                double m = ShareGrid.at(slope[k], guideWidth, guideHeight, u, v) * g
                        + ShareGrid.at(offset[k], guideWidth, guideHeight, u, v);
                double claim = claim(m);
                out[k][x] = (float) claim;
                sum += claim;
            }
            for (float[] part : out) {
                part[x] = sum > 0 ? (float) (part[x] / sum) : 1f / out.length;
            }
            for (int k = 0; k < out.length; k++) {
                if (softened[k].length > 0) {
                    pull(softened[k], k, out, x, u, v);
                }
            }
        }
    }
}
