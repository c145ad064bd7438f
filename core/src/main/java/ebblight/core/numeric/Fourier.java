package ebblight.core.numeric;

/** Discrete Fourier transforms of lengths that are powers of two, in place, real and imaginary parts apart. */
public final class Fourier {

    private final int size;
    private final double[] cosines;
    private final double[] sines;

    private Fourier(int size) {
        this.size = size;
        cosines = new double[size / 2];
        sines = new double[size / 2];
        for (int k = 0; k < size / 2; k++) {
            cosines[k] = StrictMath.cos(2 * Math.PI * k / size);
            sines[k] = StrictMath.sin(2 * Math.PI * k / size);
        }
    }

    /** Transforms of {@code size} samples, a power of two, 2 or more. */
    public static Fourier of(int size) {
        if (size < 2 || Integer.bitCount(size) != 1) {
            throw new IllegalArgumentException("size must be a power of two, 2 or more, was " + size);
        }
        return new Fourier(size);
    }

    /** The smallest power of two that is {@code n} or more. */
    public static int sizeFor(int n) {
        int size = 2;
        while (size < n) {
            size *= 2;
        }
        return size;
    }

    /** Σ x(j) exp(−2πi jk/n), or with +2πi and no division by n when {@code inverse}. */
    public void transform(double[] real, double[] imaginary, int offset, int stride, boolean inverse) {
        for (int i = 1, j = 0; i < size; i++) {
            int bit = size >> 1;
            for (; (j & bit) != 0; bit >>= 1) {
                j ^= bit;
            }
            j ^= bit;
            if (i < j) {
                swap(real, offset + i * stride, offset + j * stride);
                swap(imaginary, offset + i * stride, offset + j * stride);
            }
        }
        for (int length = 2; length <= size; length *= 2) {
            int half = length / 2;
            int step = size / length;
            for (int start = 0; start < size; start += length) {
                for (int k = 0; k < half; k++) {
                    double c = cosines[k * step];
                    double s = inverse ? sines[k * step] : -sines[k * step];
                    int a = offset + (start + k) * stride;
                    int b = a + half * stride;
                    double re = real[b] * c - imaginary[b] * s;
                    double im = real[b] * s + imaginary[b] * c;
                    real[b] = real[a] - re;
                    imaginary[b] = imaginary[a] - im;
                    real[a] += re;
                    imaginary[a] += im;
                }
            }
        }
    }

    /** Transforms every row and then every column of a plane whose sides both equal this size. */
    public void transformSquare(double[] real, double[] imaginary, boolean inverse) {
        for (int y = 0; y < size; y++) {
            transform(real, imaginary, y * size, 1, inverse);
        }
        for (int x = 0; x < size; x++) {
            transform(real, imaginary, x, size, inverse);
        }
    }

    private static void swap(double[] values, int a, int b) {
        double v = values[a];
        values[a] = values[b];
        values[b] = v;
    }
}
