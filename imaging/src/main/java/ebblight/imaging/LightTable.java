package ebblight.imaging;

/** Linear light of every code as whole numbers, so that sums are exact and do not depend on their order. */
final class LightTable {

    private static final double LARGEST_STEP = 1 << 22;

    private LightTable() {}

    /** The value that stands for white when {@code frames} frames are to be summed without overflow. */
    static double white(int frames) {
        return Math.min(LARGEST_STEP, Math.floor((Integer.MAX_VALUE - 1024.0) / Math.max(1, frames)));
    }

    /** Light of every code of {@code frame}, times {@code gain}, in units of {@code 1 / white}. */
    static int[] of(DecodedFrame frame, double gain, double white) {
        float[] linear = frame.profile().curve().table(frame.bits());
        int[] table = new int[linear.length];
        for (int i = 0; i < table.length; i++) {
            table[i] = (int) Math.round(Math.min(1, linear[i] * gain) * white);
        }
        return table;
    }
}
