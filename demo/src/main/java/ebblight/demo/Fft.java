package ebblight.demo;

/**
 * Inverse Fourier transform of a complex field whose sides are powers of two, without scaling:
 * f(x, y) = Σ F(kx, ky) exp(2πi (kx x / columns + ky y / rows)).
 *
 * <p>Instances hold tables only and may be shared between threads; the caller brings the work arrays.
 */
final class Fft {

    private final int columns;
    private final int rows;
    private final double[] columnTurns;
    private final double[] rowTurns;

    Fft(int columns, int rows) {
        if (Integer.bitCount(columns) != 1 || Integer.bitCount(rows) != 1 || columns < 2 || rows < 2) {
            throw new IllegalArgumentException("sides must be powers of two, were " + columns + " × " + rows);
        }
        this.columns = columns;
        this.rows = rows;
        this.columnTurns = turns(columns);
        this.rowTurns = turns(rows);
    }

    private static double[] turns(int n) {
        double[] table = new double[n];
        for (int i = 0; i < n / 2; i++) {
            table[2 * i] = StrictMath.cos(2 * Math.PI * i / n);
            table[2 * i + 1] = StrictMath.sin(2 * Math.PI * i / n);
        }
        return table;
    }

    /**
     * Transforms a spectrum that is stored column by column ({@code kx · rows + ky}) into a field that is stored row
     * by row ({@code y · columns + x}). The spectrum is overwritten.
     */
    void inverse(double[] spectrumRe, double[] spectrumIm, double[] fieldRe, double[] fieldIm) {
        for (int kx = 0; kx < columns; kx++) {
            line(spectrumRe, spectrumIm, kx * rows, rows, rowTurns);
        }
        transpose(spectrumRe, fieldRe);
        transpose(spectrumIm, fieldIm);
        for (int y = 0; y < rows; y++) {
            line(fieldRe, fieldIm, y * columns, columns, columnTurns);
        }
    }

    private void transpose(double[] from, double[] to) {
        int block = 16;
        for (int kx0 = 0; kx0 < columns; kx0 += block) {
            int kx1 = Math.min(columns, kx0 + block);
            for (int y0 = 0; y0 < rows; y0 += block) {
                int y1 = Math.min(rows, y0 + block);
                for (int kx = kx0; kx < kx1; kx++) {
                    for (int y = y0; y < y1; y++) {
                        to[y * columns + kx] = from[kx * rows + y];
                    }
                }
            }
        }
    }

    /** Decimation in time, radix 2; a line of zeros, as outside a wave band, is left alone. */
    private static void line(double[] re, double[] im, int at, int n, double[] turns) {
        if (empty(re, im, at, n)) {
            return;
        }
        int shift = Integer.numberOfLeadingZeros(n) + 1;
        for (int i = 1; i < n - 1; i++) {
            int j = Integer.reverse(i) >>> shift;
            if (j > i) {
                swap(re, at + i, at + j);
                swap(im, at + i, at + j);
            }
        }
        for (int i = at; i < at + n; i += 2) {
            double r = re[i + 1];
            double m = im[i + 1];
            re[i + 1] = re[i] - r;
            im[i + 1] = im[i] - m;
            re[i] += r;
            im[i] += m;
        }
        for (int half = 2; half < n; half <<= 1) {
            int stride = n / half;
            for (int start = at; start < at + n; start += 2 * half) {
                for (int k = 0, w = 0; k < half; k++, w += stride) {
                    int a = start + k;
                    int b = a + half;
                    double c = turns[w];
                    double s = turns[w + 1];
                    double r = re[b] * c - im[b] * s;
                    double m = re[b] * s + im[b] * c;
                    re[b] = re[a] - r;
                    im[b] = im[a] - m;
                    re[a] += r;
                    im[a] += m;
                }
            }
        }
    }

    private static boolean empty(double[] re, double[] im, int at, int n) {
        for (int i = at; i < at + n; i++) {
            if (re[i] != 0 || im[i] != 0) {
                return false;
            }
        }
        return true;
    }

    private static void swap(double[] a, int i, int j) {
        double t = a[i];
        a[i] = a[j];
        a[j] = t;
    }
}
