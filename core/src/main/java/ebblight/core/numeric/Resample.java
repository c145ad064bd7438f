package ebblight.core.numeric;

import java.util.Arrays;

/** Values between the samples of a plane, and planes made smaller. */
public final class Resample {

    private Resample() {}

    /** The plane at ({@code x}, {@code y}) by straight lines between samples; beyond the border it is mirrored. */
    public static double mirrored(float[] plane, int width, int height, double x, double y) {
        double fx = Math.floor(x);
        double fy = Math.floor(y);
        int x0 = (int) fx;
        int y0 = (int) fy;
        double ax = x - fx;
        double ay = y - fy;
        int x1 = x0 + 1;
        int y1 = y0 + 1;
        if (x0 < 0 || y0 < 0 || x1 >= width || y1 >= height) {
            x0 = Blur.mirrored(x0, width);
            x1 = Blur.mirrored(x1, width);
            y0 = Blur.mirrored(y0, height);
            y1 = Blur.mirrored(y1, height);
        }
        double top = plane[y0 * width + x0] * (1 - ax) + plane[y0 * width + x1] * ax;
        double bottom = plane[y1 * width + x0] * (1 - ax) + plane[y1 * width + x1] * ax;
        return top * (1 - ay) + bottom * ay;
    }

    /**
     * Weights of cubic convolution (Keys 1981, a = −0.5) for the four samples round a place that lies {@code past} (0
     * to 1) beyond the second of them.
     */
    public static void cubicWeights(double past, double[] weights) {
        weights[0] = ((-0.5 * past + 1) * past - 0.5) * past;
        weights[1] = (1.5 * past - 2.5) * past * past + 1;
        weights[2] = ((-1.5 * past + 2) * past + 0.5) * past;
        weights[3] = (0.5 * past - 0.5) * past * past;
    }

    /** Area mean of {@code source} at a smaller or equal size: every source pixel counts by how much of it falls in. */
    public static void area(float[] source, int width, int height, float[] destination, int newWidth, int newHeight) {
        if (newWidth > width || newHeight > height) {
            throw new IllegalArgumentException("cannot enlarge " + width + " × " + height + " to " + newWidth + " × "
                    + newHeight + " by area means");
        }
        double sx = (double) width / newWidth;
        double sy = (double) height / newHeight;
        double[] rows = new double[newWidth];
        for (int v = 0; v < newHeight; v++) {
            double top = v * sy;
            double bottom = (v + 1) * sy;
            Arrays.fill(rows, 0);
            for (int y = (int) top; y < height && y < bottom; y++) {
                double wy = Math.min(bottom, y + 1) - Math.max(top, y);
                for (int u = 0; u < newWidth; u++) {
                    double left = u * sx;
                    double right = (u + 1) * sx;
                    double sum = 0;
                    for (int x = (int) left; x < width && x < right; x++) {
                        sum += (Math.min(right, x + 1) - Math.max(left, x)) * source[y * width + x];
                    }
                    rows[u] += wy * sum;
                }
            }
            for (int u = 0; u < newWidth; u++) {
                destination[v * newWidth + u] = (float) (rows[u] / (sx * sy));
            }
        }
    }
}
