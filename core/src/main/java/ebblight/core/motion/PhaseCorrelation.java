package ebblight.core.motion;

import ebblight.core.numeric.Fourier;

/** Shift between two planes from the phases of their spectra (Kuglin and Hines 1975), to about half a pixel. */
public final class PhaseCorrelation {

    private PhaseCorrelation() {}

    /** The shift (x, y) in pixels by which {@code second} lies further right and down than {@code first}. */
    public static double[] shift(float[] first, float[] second, int width, int height) {
        int size = Fourier.sizeFor(Math.max(width, height));
        Fourier fourier = Fourier.of(size);
        double[] a = windowed(first, width, height, size);
        double[] ai = new double[size * size];
        double[] b = windowed(second, width, height, size);
        double[] bi = new double[size * size];
        fourier.transformSquare(a, ai, false);
        fourier.transformSquare(b, bi, false);
        for (int k = 0; k < a.length; k++) {
            double re = b[k] * a[k] + bi[k] * ai[k];
            double im = bi[k] * a[k] - b[k] * ai[k];
            double norm = Math.sqrt(re * re + im * im) + 1e-30;
            a[k] = re / norm;
            ai[k] = im / norm;
        }
        fourier.transformSquare(a, ai, true);
        int best = 0;
        for (int k = 1; k < a.length; k++) {
            if (a[k] > a[best]) {
                best = k;
            }
        }
        // The centre of mass round the peak tells the part of a pixel.
        double sum = 0;
        double sx = 0;
        double sy = 0;
        int px = best % size;
        int py = best / size;
        for (int j = -2; j <= 2; j++) {
            for (int i = -2; i <= 2; i++) {
                double v = Math.max(0, a[Math.floorMod(py + j, size) * size + Math.floorMod(px + i, size)]);
                sum += v;
                sx += v * i;
                sy += v * j;
            }
        }
        double x = px + (sum > 0 ? sx / sum : 0);
        double y = py + (sum > 0 ? sy / sum : 0);
        return new double[] {x > size / 2.0 ? x - size : x, y > size / 2.0 ? y - size : y};
    }

    private static double[] windowed(float[] plane, int width, int height, int size) {
        double[] out = new double[size * size];
        for (int y = 0; y < height; y++) {
            double wy = hann(y, height);
            for (int x = 0; x < width; x++) {
                out[y * size + x] = plane[y * width + x] * wy * hann(x, width);
            }
        }
        return out;
    }

    private static double hann(int i, int n) {
        return n < 2 ? 1 : 0.5 - 0.5 * StrictMath.cos(2 * Math.PI * i / (n - 1));
    }
}
