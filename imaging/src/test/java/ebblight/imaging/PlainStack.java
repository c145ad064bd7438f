package ebblight.imaging;

import java.util.Arrays;

/** The plain twin of the stacker: every value in double, sample by sample, by the curve's own formula. */
final class PlainStack {

    private PlainStack() {}

    /** 16-bit codes of the stack of 8-bit sRGB frames. */
    static int[] of(int[][] frames, StackOptions.As as) {
        int n = frames[0].length;
        int[] out = new int[n];
        double[] light = new double[frames.length];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < frames.length; k++) {
                light[k] = linear(frames[k][i] / 255.0);
            }
            Arrays.sort(light);
            double value =
                    switch (as) {
                        case MEAN -> Arrays.stream(light).sum() / light.length;
                        case BRIGHTEST -> light[light.length - 1];
                        case DARKEST -> light[0];
                        case MEDIAN -> (light[light.length / 2] + light[(light.length - 1) / 2]) / 2;
                    };
            out[i] = (int) Math.round(65535 * code(value));
        }
        return out;
    }

    /** IEC 61966-2-1. */
    static double linear(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    /** IEC 61966-2-1. */
    static double code(double linear) {
        return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
    }
}
