package ebblight.imaging;

/** Rounding of codes, done for every sample of a picture. */
final class WholeCode {

    private WholeCode() {}

    /**
     * The nearest whole number, halves up, of a value from 0 to 2³¹ − 1. Unlike {@link Math#round(double)} it does not
     * take bits apart, which costs more than all the rest of encoding; they differ for one value alone, the last below
     * one half.
     */
    static int nearest(double value) {
        return (int) (value + 0.5);
    }
}
