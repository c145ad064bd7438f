package ebblight.imaging.print;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * A picture at another size, by Lanczos' kernel of three lobes, rows first. Made smaller in linear light, the kernel as
 * wide as the new pixels; made larger on the square root of light, so that edges ring alike on their light and dark side.
 */
public final class Resized {

    private static final int LOBES = 3;

    private Resized() {}

    /** The picture at {@code width × height}; itself where it is that size already. */
    public static RgbPicture to(RgbPicture picture, int width, int height, Work work) {
        if (picture.width() == width && picture.height() == height) {
            return picture;
        }
        RgbPicture out = RgbPicture.black(width, height);
        boolean larger = width > picture.width() || height > picture.height();
        Taps across = Taps.of(picture.width(), width);
        Taps down = Taps.of(picture.height(), height);
        for (int c = 0; c < 3; c++) {
            float[] plane = picture.plane(c);
            float[] to = out.plane(c);
            float[] rows = new float[width * picture.height()];
            work.forEach(picture.height(), y -> across.row(plane, y * picture.width(), rows, y * width, larger));
            work.forEach(height, y -> down.column(rows, width, y, to, larger));
        }
        return out;
    }

    /** For every new sample the first old one that counts, and the weights from there on; beyond the border it repeats. */
    private record Taps(int from, int to, int count, int[] first, float[] weights) {

        static Taps of(int from, int to) {
            double step = (double) from / to;
            double wide = Math.max(1, step);
            int count = 2 * (int) Math.ceil(LOBES * wide) + 1;
            int[] first = new int[to];
            float[] weights = new float[to * count];
            for (int i = 0; i < to; i++) {
                double middle = (i + 0.5) * step - 0.5;
                first[i] = (int) Math.floor(middle) - count / 2 + 1;
                double sum = 0;
                double[] raw = new double[count];
                for (int k = 0; k < count; k++) {
                    raw[k] = lanczos((first[i] + k - middle) / wide);
                    sum += raw[k];
                }
                for (int k = 0; k < count; k++) {
                    weights[i * count + k] = (float) (raw[k] / sum);
                }
            }
            return new Taps(from, to, count, first, weights);
        }

        private static double lanczos(double x) {
            if (Math.abs(x) < 1e-9) {
                return 1;
            }
            if (Math.abs(x) >= LOBES) {
                return 0;
            }
            double p = Math.PI * x;
            return LOBES * StrictMath.sin(p) * StrictMath.sin(p / LOBES) / (p * p);
        }

        void row(float[] source, int at, float[] destination, int out, boolean root) {
            for (int i = 0; i < to; i++) {
                double sum = 0;
                for (int k = 0; k < count; k++) {
                    float v = source[at + Math.max(0, Math.min(from - 1, first[i] + k))];
                    sum += weights[i * count + k] * (root ? Math.sqrt(Math.max(0, v)) : v);
                }
                destination[out + i] = (float) sum;
            }
        }

        void column(float[] rows, int width, int y, float[] destination, boolean root) {
            double[] sum = new double[width];
            for (int k = 0; k < count; k++) {
                double weight = weights[y * count + k];
                int row = Math.max(0, Math.min(from - 1, first[y] + k)) * width;
                for (int x = 0; x < width; x++) {
                    sum[x] += weight * rows[row + x];
                }
            }
            for (int x = 0; x < width; x++) {
                double v = Math.max(0, sum[x]);
                destination[y * width + x] = (float) (root ? v * v : v);
            }
        }
    }
}
