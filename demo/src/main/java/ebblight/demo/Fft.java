package ebblight.demo;

/**
 * Inverse Fourier transform of a complex field whose sides are powers of four, without scaling:
 * f(x, y) = Σ F(kx, ky) exp(2πi (kx x / columns + ky y / rows)), to about 1e-6 of its largest value.
 *
 * <p>Lines are transformed sixteen at a time, side by side, so that a processor may do them at once (self-sorting
 * radix 4, Stockham 1966 after Cochran et al. 1967, from memory). Instances hold tables only and may be shared between
 * threads; the caller brings the work arrays.
 */
final class Fft {

    private static final int ABREAST = 16;

    private final int columns;
    private final int rows;
    private final float[] columnTurns;
    private final float[] rowTurns;

    Fft(int columns, int rows) {
        if (!powerOfFour(columns) || !powerOfFour(rows) || columns < ABREAST || rows < ABREAST) {
            throw new IllegalArgumentException(
                    "sides must be powers of four from " + ABREAST + ", were " + columns + " × " + rows);
        }
        this.columns = columns;
        this.rows = rows;
        this.columnTurns = turns(columns);
        this.rowTurns = turns(rows);
    }

    private static boolean powerOfFour(int n) {
        return Integer.bitCount(n) == 1 && Integer.numberOfTrailingZeros(n) % 2 == 0;
    }

    private static float[] turns(int n) {
        float[] table = new float[2 * n];
        for (int i = 0; i < n; i++) {
            table[2 * i] = (float) StrictMath.cos(2 * Math.PI * i / n);
            table[2 * i + 1] = (float) StrictMath.sin(2 * Math.PI * i / n);
        }
        return table;
    }

    /** Work arrays for one thread. */
    FieldSpace space() {
        return new FieldSpace(columns * rows, 2 * ABREAST * Math.max(columns, rows));
    }

    /**
     * Transforms the spectrum ({@code ky · columns + kx}) into the field ({@code y · columns + x}) of {@code space}.
     * The spectrum is left as it was.
     */
    void inverse(FieldSpace space) {
        lines(space.spectrumRe, space.spectrumIm, rows, columns, rowTurns, space.halfRe, space.halfIm, space);
        lines(space.halfRe, space.halfIm, columns, rows, columnTurns, space.re, space.im, space);
    }

    /** Transforms along the first of two indices, {@code n} long, and leaves the result transposed. */
    private static void lines(
            float[] re, float[] im, int n, int across, float[] turns, float[] toRe, float[] toIm, FieldSpace space) {
        int imaginary = n * ABREAST;
        for (int from = 0; from < across; from += ABREAST) {
            for (int i = 0; i < n; i++) {
                System.arraycopy(re, i * across + from, space.lineA, i * ABREAST, ABREAST);
                System.arraycopy(im, i * across + from, space.lineA, imaginary + i * ABREAST, ABREAST);
            }
            float[] done = abreast(space.lineA, space.lineB, n, turns);
            for (int b = 0; b < ABREAST; b++) {
                int to = (from + b) * n;
                for (int i = 0; i < n; i++) {
                    toRe[to + i] = done[i * ABREAST + b];
                    toIm[to + i] = done[imaginary + i * ABREAST + b];
                }
            }
        }
    }

    private static float[] abreast(float[] lineA, float[] lineB, int size, float[] turns) {
        float[] from = lineA;
        float[] to = lineB;
        int stride = ABREAST;
        for (int n = size; n > 1; n /= 4) {
            int quarter = stride * (n / 4);
            for (int p = 0; p < n / 4; p++) {
                butterflies(from, to, stride * p, quarter, 4 * stride * p, stride, size * ABREAST, turns, size / n * p);
            }
            stride *= 4;
            float[] swap = from;
            from = to;
            to = swap;
        }
        return from;
    }

    private static void butterflies(
            float[] x, float[] y, int at, int quarter, int to, int count, int imaginary, float[] turns, int turn) {
        float r1 = turns[2 * turn];
        float i1 = turns[2 * turn + 1];
        float r2 = turns[4 * turn];
        float i2 = turns[4 * turn + 1];
        float r3 = turns[6 * turn];
        float i3 = turns[6 * turn + 1];
        int b = at + quarter;
        int c = b + quarter;
        int d = c + quarter;
        int second = to + count;
        int third = second + count;
        int fourth = third + count;
        for (int q = 0; q < count; q++) {
            float evenR = x[at + q] + x[c + q];
            float evenI = x[imaginary + at + q] + x[imaginary + c + q];
            float oddR = x[at + q] - x[c + q];
            float oddI = x[imaginary + at + q] - x[imaginary + c + q];
            float sumR = x[b + q] + x[d + q];
            float sumI = x[imaginary + b + q] + x[imaginary + d + q];
            float turnedR = x[imaginary + d + q] - x[imaginary + b + q];
            float turnedI = x[b + q] - x[d + q];
            y[to + q] = evenR + sumR;
            y[imaginary + to + q] = evenI + sumI;
            float re = oddR + turnedR;
            float im = oddI + turnedI;
            y[second + q] = re * r1 - im * i1;
            y[imaginary + second + q] = re * i1 + im * r1;
            re = evenR - sumR;
            im = evenI - sumI;
            y[third + q] = re * r2 - im * i2;
            y[imaginary + third + q] = re * i2 + im * r2;
            re = oddR - turnedR;
            im = oddI - turnedI;
            y[fourth + q] = re * r3 - im * i3;
            y[imaginary + fourth + q] = re * i3 + im * r3;
        }
    }
}
