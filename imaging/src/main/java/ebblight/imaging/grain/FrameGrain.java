package ebblight.imaging.grain;

import java.util.Optional;

/**
 * Noise of single frames of one view, measured on how neighbouring frames differ: the white part of the differences in
 * blocks spread over the picture, the calmest tenth in eight classes of luminance. What moves only adds to it, so the
 * calmest blocks show the noise; what a JPEG smoothed away is not seen.
 */
public final class FrameGrain {

    private static final int BLOCK = 16;
    /** A block and one pixel round it, for the mask. */
    private static final int SIDE = BLOCK + 2;

    private static final int COLUMNS = 24;
    private static final int ROWS = 16;
    private static final int MOST_PAIRS = 11;

    private final int width;
    private final int columns;
    private final int rows;
    private final int[] left;
    private final int[] top;
    private final double[] squares;
    private final double[] means;
    private float[][] previous = new float[0][];
    private int pairs;

    /** For frames of a size. */
    public FrameGrain(int width, int height) {
        this.width = width;
        columns = Math.min(COLUMNS, width / SIDE);
        rows = Math.min(ROWS, height / SIDE);
        left = places(columns, width);
        top = places(rows, height);
        squares = new double[columns * rows];
        means = new double[columns * rows];
    }

    private static int[] places(int count, int of) {
        int[] places = new int[count];
        for (int k = 0; k < count; k++) {
            places[k] = (int) ((long) (of - SIDE) * (2 * k + 1) / (2L * count));
        }
        return places;
    }

    /** Gives the luminance of a row, in linear light. */
    public interface Rows {
        void read(int y, float[] luminance);
    }

    /** Whether more frames would be looked at. */
    public boolean wanting() {
        return pairs < MOST_PAIRS && squares.length > 0;
    }

    /** Adds the next frame. */
    public void add(Rows frame) {
        float[][] now = new float[squares.length][SIDE * SIDE];
        float[] row = new float[width];
        for (int r = 0; r < rows; r++) {
            for (int y = 0; y < SIDE; y++) {
                frame.read(top[r] + y, row);
                for (int c = 0; c < columns; c++) {
                    System.arraycopy(row, left[c], now[r * columns + c], y * SIDE, SIDE);
                }
            }
        }
        if (previous.length > 0) {
            for (int k = 0; k < now.length; k++) {
                compare(previous[k], now[k], k);
            }
            pairs++;
        }
        previous = now;
    }

    private void compare(float[] before, float[] after, int k) {
        float[] difference = new float[SIDE * SIDE];
        double sum = 0;
        for (int p = 0; p < difference.length; p++) {
            difference[p] = after[p] - before[p];
            sum += after[p];
        }
        means[k] += sum / difference.length;
        for (int y = 1; y <= BLOCK; y++) {
            for (int x = 1; x <= BLOCK; x++) {
                double white = White.at(difference, y * SIDE + x, SIDE);
                squares[k] += white * white;
            }
        }
    }

    /** Noise of one frame; empty before two frames were seen, or where they are too small. */
    public Optional<Grain> ofFrame() {
        if (pairs == 0 || squares.length < 2 * CalmLine.CLASSES) {
            return Optional.empty();
        }
        double[] mean = new double[squares.length];
        double[] variance = new double[squares.length];
        for (int k = 0; k < squares.length; k++) {
            mean[k] = means[k] / pairs;
            // two frames in every difference
            variance[k] = squares[k] / (2 * White.SQUARES * BLOCK * BLOCK * pairs);
        }
        return Optional.of(CalmLine.of(mean, variance, lowestTenth(pairs), "the frames of the stack"));
    }

    /**
     * A lowest tenth over the true variance. A block holds 256/3.78 independent values (Σρ² of the mask is 1.944 in each
     * direction); neighbouring differences share a frame, so that m pairs count as m/1.5; its variance scatters by √(2/n),
     * and the lowest tenth lies 1.28 of that below.
     */
    private static double lowestTenth(int pairs) {
        double values = BLOCK * BLOCK / 3.78 * Math.max(1, pairs / 1.5);
        return 1 - 1.2816 * Math.sqrt(2 / values);
    }
}
