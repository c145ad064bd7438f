package ebblight.core.numeric;

/**
 * The guided filter (He, Sun, Tang 2010): smooths a plane but lets it keep the edges of a guide, by fitting the plane
 * as a straight line of the guide in every box.
 */
public final class Guided {

    private Guided() {}

    /**
     * Filters {@code plane} by {@code guide} into {@code destination} (which may be {@code plane}).
     *
     * @param radius of the boxes, in pixels
     * @param epsilon how much variance of the guide counts as an edge, in squared units of the guide
     */
    public static void filter(
            float[] plane, float[] guide, float[] destination, int width, int height, int radius, double epsilon) {
        int n = width * height;
        float[] slope = new float[n];
        float[] offset = new float[n];
        lines(plane, guide, slope, offset, width, height, radius, epsilon);
        for (int i = 0; i < n; i++) {
            destination[i] = (float) ((double) slope[i] * guide[i] + offset[i]);
        }
    }

    /**
     * The straight lines alone: the filtered plane is {@code slope · guide + offset}. Computed on reduced pictures and
     * laid over a guide of full size, they keep the edges of that (He and Sun 2015, fast guided filter).
     */
    public static void lines(
            float[] plane,
            float[] guide,
            float[] slope,
            float[] offset,
            int width,
            int height,
            int radius,
            double epsilon) {
        int n = width * height;
        float[] work = new float[n];
        float[] meanGuide = new float[n];
        float[] meanPlane = new float[n];
        Blur.box(guide, meanGuide, work, width, height, radius);
        Blur.box(plane, meanPlane, work, width, height, radius);
        for (int i = 0; i < n; i++) {
            slope[i] = (float) ((double) guide[i] * plane[i]);
            offset[i] = (float) ((double) guide[i] * guide[i]);
        }
        Blur.box(slope, slope, work, width, height, radius);
        Blur.box(offset, offset, work, width, height, radius);
        for (int i = 0; i < n; i++) {
            double mg = meanGuide[i];
            double mp = meanPlane[i];
            double a = (slope[i] - mg * mp) / (offset[i] - mg * mg + epsilon);
            slope[i] = (float) a;
            offset[i] = (float) (mp - a * mg);
        }
        Blur.box(slope, slope, work, width, height, radius);
        Blur.box(offset, offset, work, width, height, radius);
    }
}
