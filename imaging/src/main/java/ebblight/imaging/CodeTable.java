package ebblight.imaging;

/** Linear light to code values, fast: a fine table with straight lines between, within 0.01 of a 16-bit code. */
final class CodeTable {

    private static final int STEPS = 1 << 18;

    private final float[] codes;

    private CodeTable(float[] codes) {
        this.codes = codes;
    }

    static CodeTable of(TransferCurve curve) {
        float[] codes = new float[STEPS + 2];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (float) (65535 * curve.toCode(Math.min(1, i / (double) STEPS)));
        }
        return new CodeTable(codes);
    }

    /** Code from 0 to 65535, not rounded; light is clipped to 0 to 1. */
    double code16(double linear) {
        double at = Math.max(0, Math.min(1, linear)) * STEPS;
        int below = (int) at;
        double share = at - below;
        return codes[below] + share * (codes[below + 1] - (double) codes[below]);
    }
}
