package ebblight.imaging;

/**
 * Linear light of every code as whole numbers, so that sums are exact and do not depend on their order. The last table
 * is kept: most stacks need only one.
 */
final class LightTable {

    private static final double LARGEST_STEP = 1 << 22;

    private final double white;
    private int[] table = new int[0];
    private double gain = Double.NaN;
    private IccProfile profile = IccProfile.srgb();

    LightTable(double white) {
        this.white = white;
    }

    /** The value that stands for white when {@code frames} frames are to be summed without overflow. */
    static double white(int frames) {
        return Math.min(LARGEST_STEP, Math.floor((Integer.MAX_VALUE - 1024.0) / Math.max(1, frames)));
    }

    /** Light of every code of {@code frame}, times {@code times}, in units of {@code 1 / white}. */
    int[] of(DecodedFrame frame, double times) {
        if (times == gain
                && table.length == 1 << frame.bits()
                && frame.profile().sameAs(profile)) {
            return table;
        }
        float[] linear = frame.profile().curve().table(frame.bits());
        int[] light = new int[linear.length];
        for (int i = 0; i < light.length; i++) {
            light[i] = (int) Math.round(Math.min(1, linear[i] * times) * white);
        }
        table = light;
        gain = times;
        profile = frame.profile();
        return light;
    }
}
