package ebblight.imaging.finish;

/**
 * Contrast as grades of paper, 0 soft to 5 hard, 2 leaves it as it is. A curve on L* through black, middle (L* 50) and
 * white; its slope in the middle is the exposure range of grade 2 over that of the grade. The ranges are the middles of
 * the classes of ISO 6846 as handbooks give them (from memory): 150, 130, 110, 90, 70, 50 hundredths of a density.
 */
public final class Grade {

    private static final double[] RANGES = {150, 130, 110, 90, 70, 50};
    private static final int STEPS = 4096;

    private final float[] table = new float[STEPS + 1];

    private Grade() {}

    /** The curve of a grade of 0 to 5, whole or between. */
    public static Grade of(double grade) {
        Grade made = new Grade();
        double slope = slope(grade);
        double bend = bend(slope >= 1 ? slope : 1 / slope);
        for (int i = 0; i <= STEPS; i++) {
            double x = 2.0 * i / STEPS - 1;
            double y = bend < 1e-6
                    ? x
                    : slope >= 1
                            ? StrictMath.tanh(bend * x) / StrictMath.tanh(bend)
                            : inverseTanh(x * StrictMath.tanh(bend)) / bend;
            made.table[i] = (float) (50 * (1 + y));
        }
        return made;
    }

    /** Slope in the middle; between whole grades the ranges lie on straight lines. */
    static double slope(double grade) {
        if (!(grade >= 0 && grade <= 5)) {
            throw new IllegalArgumentException("grade must lie between 0 (soft) and 5 (hard), was " + grade);
        }
        int below = Math.min(4, (int) grade);
        double range = RANGES[below] + (grade - below) * (RANGES[below + 1] - RANGES[below]);
        return RANGES[2] / range;
    }

    /** How far {@code tanh} must bend to be so steep in the middle: a / tanh a = slope. */
    private static double bend(double slope) {
        double low = 0;
        double high = 8;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            double steep = middle < 1e-9 ? 1 : middle / StrictMath.tanh(middle);
            if (steep < slope) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private static double inverseTanh(double x) {
        return 0.5 * StrictMath.log((1 + x) / (1 - x));
    }

    /** L* on this paper of an L* of 0 to 100. */
    public double lightness(double lightness) {
        double at = Math.max(0, Math.min(100, lightness)) * STEPS / 100;
        int below = Math.min(STEPS - 1, (int) at);
        return table[below] + (at - below) * (table[below + 1] - (double) table[below]);
    }
}
