package ebblight.core.numeric;

import java.util.Arrays;

/** Values between the samples of a plane, and planes made smaller. */
public final class Resample {

    private Resample() {}

    /** The plane at ({@code x}, {@code y}) by straight lines between samples; beyond the border it is mirrored. */
    public static double mirrored(float[] plane, int width, int height, double x, double y) {
        if (x >= 0 && y >= 0 && x < width - 1 && y < height - 1) {
            int x0 = (int) x;
            int y0 = (int) y;
            int at = y0 * width + x0;
            return between(plane[at], plane[at + 1], plane[at + width], plane[at + width + 1], x - x0, y - y0);
        }
        double fx = Math.floor(x);
        double fy = Math.floor(y);
        int x0 = Blur.mirrored((int) fx, width);
        int x1 = Blur.mirrored((int) fx + 1, width);
        int y0 = Blur.mirrored((int) fy, height) * width;
        int y1 = Blur.mirrored((int) fy + 1, height) * width;
        return between(plane[y0 + x0], plane[y0 + x1], plane[y1 + x0], plane[y1 + x1], x - fx, y - fy);
    }

    /** Between four samples: two of a row, two of the next, and how far beyond the first, 0 to 1. */
    private static double between(double a, double b, double c, double d, double right, double down) {
        double top = a * (1 - right) + b * right;
        double bottom = c * (1 - right) + d * right;
        return top * (1 - down) + bottom * down;
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
