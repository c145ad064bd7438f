package ebblight.core.exposure;

import ebblight.core.numeric.Powers;

/**
 * Film that answers less the longer it is exposed: corrected = metered^P above 1 s (manufacturers' sheets; P 1.25 to
 * 1.43 for black-and-white films). Digital sensors need none: P = 1.
 */
public record Reciprocity(double exponent) {

    public Reciprocity {
        if (!(exponent >= 1 && exponent <= 2)) {
            throw new IllegalArgumentException("the reciprocity exponent lies between 1 and 2, was " + exponent);
        }
    }

    /** No correction. */
    public static Reciprocity none() {
        return new Reciprocity(1);
    }

    /** Seconds to expose for a metered time. */
    public double corrected(double meteredSeconds) {
        return meteredSeconds <= 1 || exponent == 1 ? meteredSeconds : Powers.pow(meteredSeconds, exponent);
    }
}
