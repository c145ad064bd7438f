package ebblight.imaging.finish;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;

/**
 * The guided filter with its straight lines fitted on a small copy and drawn out to full size (He and Sun 2015, "Fast
 * guided filter"): a plane is smoothed but keeps the edges of a guide, at little memory for any radius.
 */
final class EdgeAware {

    /** Small pixels in a radius: enough that the fits vary slowly from one to the next. */
    private static final int SMALL_RADIUS = 5;

    private final int width;
    private final int height;
    private final int smallWidth;
    private final int smallHeight;
    private final int smallRadius;

    /**
     * A filter for planes of a size.
     *
     * @param radius of the boxes, in pixels
     */
    EdgeAware(int width, int height, int radius) {
        this.width = width;
        this.height = height;
        int step = Math.max(1, radius / SMALL_RADIUS);
        smallWidth = Math.max(1, width / step);
        smallHeight = Math.max(1, height / step);
        smallRadius = Math.max(1, radius / step);
    }

    int smallWidth() {
        return smallWidth;
    }

    int smallHeight() {
        return smallHeight;
    }

    /** The plane at the size of the fits. */
    float[] small(float[] plane) {
        float[] small = new float[smallWidth * smallHeight];
        Resample.area(plane, width, height, small, smallWidth, smallHeight);
        return small;
    }

    /** The guide smoothed by itself. */
    float[] smooth(float[] guide, double epsilon, Work work) {
        float[] small = small(guide);
        return filter(small, small, guide, epsilon, work);
    }

    /**
     * A small plane drawn out along the edges of the guide.
     *
     * @param epsilon how much variance of the guide counts as an edge, in squared units of the guide
     */
    float[] filter(float[] small, float[] smallGuide, float[] guide, double epsilon, Work work) {
        int n = small.length;
        float[] scratch = new float[n];
        float[] meanGuide = new float[n];
        float[] meanPlane = new float[n];
        float[] slope = new float[n];
        float[] offset = new float[n];
        Blur.box(smallGuide, meanGuide, scratch, smallWidth, smallHeight, smallRadius);
        Blur.box(small, meanPlane, scratch, smallWidth, smallHeight, smallRadius);
        for (int i = 0; i < n; i++) {
            slope[i] = (float) ((double) smallGuide[i] * small[i]);
            offset[i] = (float) ((double) smallGuide[i] * smallGuide[i]);
        }
        Blur.box(slope, slope, scratch, smallWidth, smallHeight, smallRadius);
        Blur.box(offset, offset, scratch, smallWidth, smallHeight, smallRadius);
        for (int i = 0; i < n; i++) {
            double variance = Math.max(0, offset[i] - (double) meanGuide[i] * meanGuide[i]);
            double a = (slope[i] - (double) meanGuide[i] * meanPlane[i]) / (variance + epsilon);
            slope[i] = (float) a;
            offset[i] = (float) (meanPlane[i] - a * meanGuide[i]);
        }
        Blur.box(slope, slope, scratch, smallWidth, smallHeight, smallRadius);
        Blur.box(offset, offset, scratch, smallWidth, smallHeight, smallRadius);
        float[] out = new float[width * height];
        work.forEach(height, y -> row(y, slope, offset, guide, out));
        return out;
    }

    private void row(int y, float[] slope, float[] offset, float[] guide, float[] out) {
        double v = Math.max(0, Math.min(smallHeight - 1, (y + 0.5) * smallHeight / height - 0.5));
        int above = ((int) v) * smallWidth;
        int below = Math.min(smallHeight - 1, ((int) v) + 1) * smallWidth;
        double down = v - ((int) v);
        for (int x = 0; x < width; x++) {
            double u = Math.max(0, Math.min(smallWidth - 1, (x + 0.5) * smallWidth / width - 0.5));
            int left = (int) u;
            int right = Math.min(smallWidth - 1, left + 1);
            double across = u - left;
            double a = (1 - down) * ((1 - across) * slope[above + left] + across * slope[above + right])
                    + down * ((1 - across) * slope[below + left] + across * slope[below + right]);
            double b = (1 - down) * ((1 - across) * offset[above + left] + across * offset[above + right])
                    + down * ((1 - across) * offset[below + left] + across * offset[below + right]);
            out[y * width + x] = (float) (a * guide[y * width + x] + b);
        }
    }
}
