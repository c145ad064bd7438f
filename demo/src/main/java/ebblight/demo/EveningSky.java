package ebblight.demo;

import ebblight.core.numeric.Powers;

/**
 * Colours of the sky and its clouds by direction, a little after sunset, as scene-linear red, green, blue. The colours
 * are chosen by eye; nothing is measured on them.
 */
final class EveningSky {

    /** Direction of the light under the horizon: sine of its angle to the right of the view. */
    static final double GLOW_RIGHT = -0.15;

    private static final double[] SINE = {0, 0.045, 0.11, 0.2, 0.33, 0.6, 1};
    private static final double[][] TOWARDS = {
        {0.86, 0.44, 0.20},
        {0.82, 0.49, 0.26},
        {0.62, 0.47, 0.36},
        {0.39, 0.40, 0.43},
        {0.24, 0.31, 0.42},
        {0.12, 0.19, 0.31},
        {0.07, 0.12, 0.22}
    };
    private static final double[][] ASIDE = {
        {0.36, 0.26, 0.28},
        {0.40, 0.29, 0.33},
        {0.34, 0.30, 0.37},
        {0.25, 0.28, 0.39},
        {0.18, 0.24, 0.36},
        {0.10, 0.16, 0.28},
        {0.06, 0.11, 0.20}
    };

    private EveningSky() {}

    /** Clear sky into {@code rgb}; {@code right} and {@code up} are direction cosines. */
    static void clear(double right, double up, double[] rgb) {
        double aside = (right - GLOW_RIGHT) / 0.42;
        double towards = StrictMath.exp(-aside * aside);
        double spot = (right - GLOW_RIGHT) / 0.15;
        double low = up / 0.055;
        double glow = StrictMath.exp(-spot * spot - low * low);
        ramp(up, towards, rgb);
        rgb[0] += 0.30 * glow;
        rgb[1] += 0.20 * glow;
        rgb[2] += 0.10 * glow;
    }

    private static void ramp(double up, double towards, double[] rgb) {
        int i = 0;
        while (i < SINE.length - 2 && up > SINE[i + 1]) {
            i++;
        }
        double part = Math.max(0, Math.min(1, (up - SINE[i]) / (SINE[i + 1] - SINE[i])));
        double s = part * part * (3 - 2 * part);
        for (int c = 0; c < 3; c++) {
            double a = TOWARDS[i][c] + s * (TOWARDS[i + 1][c] - TOWARDS[i][c]);
            double b = ASIDE[i][c] + s * (ASIDE[i + 1][c] - ASIDE[i][c]);
            rgb[c] = b + towards * (a - b);
        }
    }

    /** Cloud that catches the light. */
    static void lit(double right, double up, double[] rgb) {
        double aside = (right - GLOW_RIGHT) / 0.5;
        double towards = StrictMath.exp(-aside * aside - up / 0.5);
        double high = StrictMath.exp(-up / 0.22);
        rgb[0] = 0.34 + 0.62 * towards * (0.35 + 0.65 * high);
        rgb[1] = 0.30 + 0.25 * towards * (0.3 + 0.7 * high);
        rgb[2] = 0.36 + 0.02 * towards;
    }

    /** Cloud in its own shade. */
    static void shaded(double right, double up, double[] rgb) {
        double aside = (right - GLOW_RIGHT) / 0.4;
        double towards = StrictMath.exp(-aside * aside - up / 0.15);
        rgb[0] = 0.135 + 0.20 * towards;
        rgb[1] = 0.150 + 0.08 * towards;
        rgb[2] = 0.215 + 0.01 * towards;
    }

    /** Share of the sky's own colour that air puts before a cloud at that height, 0 to 1. */
    static double haze(double up) {
        return StrictMath.exp(-Powers.pow(Math.max(up, 0) / 0.075, 0.9));
    }
}
