package ebblight.imaging.finish;

import ebblight.core.numeric.Work;

/**
 * Runs a kernel over bands of rows, several at once. Every band is copied with the rows above and below that the kernel
 * leans on; bands are the same for any number of threads, and so are the results.
 */
final class Bands {

    private static final int ROWS = 128;

    private Bands() {}

    /** Works on a band of {@code rows} rows in place. */
    interface Kernel {
        void run(float[] band, int width, int rows);
    }

    /**
     * Filters {@code plane} into {@code destination}, another plane.
     *
     * @param reach rows that a result depends on above and below
     */
    static void filter(float[] plane, float[] destination, int width, int height, int reach, Work work, Kernel kernel) {
        int count = (height + ROWS - 1) / ROWS;
        work.forEach(count, k -> {
            int from = k * ROWS;
            int to = Math.min(height, from + ROWS);
            int top = Math.max(0, from - reach);
            int bottom = Math.min(height, to + reach);
            float[] band = new float[(bottom - top) * width];
            System.arraycopy(plane, top * width, band, 0, band.length);
            kernel.run(band, width, bottom - top);
            System.arraycopy(band, (from - top) * width, destination, from * width, (to - from) * width);
        });
    }
}
