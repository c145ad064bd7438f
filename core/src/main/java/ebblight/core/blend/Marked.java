package ebblight.core.blend;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/** The light of marked pixels over the frames of a clip. */
final class Marked {

    static final int PIECES = 32;

    private Marked() {}

    /** The pixels where a mask is above one half. */
    static int[] pixels(float[] mask) {
        int count = 0;
        for (float m : mask) {
            count += m > 0.5f ? 1 : 0;
        }
        int[] at = new int[count];
        int k = 0;
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] > 0.5f) {
                at[k++] = p;
            }
        }
        return at;
    }

    /** Luminance of the pixels {@code at}, one row a frame. */
    static float[][] luminance(Clip clip, int[] at, Work work) {
        float[][] values = new float[clip.frames()][at.length];
        work.forEach(clip.frames(), i -> {
            float[] plane = new float[clip.width() * clip.height()];
            clip.luminance(i, plane);
            for (int k = 0; k < at.length; k++) {
                values[i][k] = plane[at[k]];
            }
        });
        return values;
    }

    /** Where piece {@code piece} of {@code count} things ends and the next begins. */
    static int end(int piece, int count) {
        return (int) ((long) count * (piece + 1) / PIECES);
    }

    /** The median in time of every pixel. */
    static float[] median(float[][] values, Work work) {
        int n = values.length;
        int pixels = values[0].length;
        float[] median = new float[pixels];
        work.forEach(PIECES, piece -> {
            float[] row = new float[n];
            int to = end(piece, pixels);
            for (int k = end(piece - 1, pixels); k < to; k++) {
                for (int i = 0; i < n; i++) {
                    row[i] = values[i][k];
                }
                median[k] = (float) Quantiles.median(row, n);
            }
        });
        return median;
    }
}
