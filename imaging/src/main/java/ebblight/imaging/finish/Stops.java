package ebblight.imaging.finish;

import ebblight.core.numeric.Powers;

/** Light in stops from middle grey, which reflects 18 % of what white does. */
final class Stops {

    static final double MIDDLE = 0.18;

    private Stops() {}

    /** Stops from middle grey of a luminance above 0. */
    static double of(double luminance) {
        return Powers.log2(luminance / MIDDLE);
    }

    static double factor(double stops) {
        return Powers.exp2(stops);
    }
}
