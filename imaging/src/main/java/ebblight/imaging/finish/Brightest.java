package ebblight.imaging.finish;

/** The light below which a share of a plane lies, to a thousandth of a stop from one white to 256. */
final class Brightest {

    private static final int STEPS = 8000;

    private Brightest() {}

    /** A value that {@code share} of the samples do not exceed; 1 or less where that is so of white. */
    static double of(float[] plane, double share) {
        long[] counts = new long[STEPS + 1];
        long beyond = 0;
        for (float v : plane) {
            if (v > 1) {
                beyond++;
                counts[(int) Math.min(STEPS, StrictMath.ceil(1000 * StrictMath.log(v) / StrictMath.log(2)))]++;
            }
        }
        long allowed = (long) ((1 - share) * plane.length);
        if (beyond <= allowed) {
            return 1;
        }
        int k = STEPS;
        for (long above = counts[k]; above <= allowed && k > 0; above += counts[k]) {
            k--;
        }
        return Stops.factor(k / 1000.0);
    }
}
