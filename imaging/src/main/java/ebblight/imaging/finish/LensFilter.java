package ebblight.imaging.finish;

/**
 * A coloured filter on the lens of a black-and-white picture: light of its hue passes, light of other hues loses more the
 * farther it lies on the circle of hues. White keeps its tone, as when the exposure is lengthened by the factor.
 *
 * @param hueDegrees 0 red, 60 yellow, 120 green, 240 blue
 * @param factor by which white light is weakened, 1 or more
 */
public record LensFilter(double hueDegrees, double factor) {

    private static final double DENSEST = 40;

    public LensFilter {
        if (!(hueDegrees >= 0 && hueDegrees < 360)) {
            throw new IllegalArgumentException("hueDegrees must lie from 0 to below 360, was " + hueDegrees);
        }
        if (!(factor >= 1 && factor <= 64)) {
            throw new IllegalArgumentException("factor must lie between 1 and 64, was " + factor);
        }
    }

    /**
     * Weights of red, green and blue light behind the filter; they give white the luminance 1.
     *
     * @param luminance weights of the three without filter, 1 together
     */
    double[] weights(double[] luminance) {
        double[] loss = new double[3];
        double least = 1;
        for (int c = 0; c < 3; c++) {
            loss[c] = (1 - StrictMath.cos((hueDegrees - 120 * c) * Math.PI / 180)) / 2;
            least = Math.min(least, loss[c]);
        }
        double low = 0;
        double high = DENSEST;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (1 / white(luminance, loss, least, middle) < factor) {
                low = middle;
            } else {
                high = middle;
            }
        }
        if (high == DENSEST) {
            throw new IllegalArgumentException("factor: a filter of hue " + hueDegrees + "° weakens white light by "
                    + Math.round(100 / white(luminance, loss, least, DENSEST)) / 100.0 + " at most, was " + factor);
        }
        double[] weights = new double[3];
        for (int c = 0; c < 3; c++) {
            weights[c] = factor * luminance[c] * StrictMath.exp(-low * (loss[c] - least));
        }
        return weights;
    }

    private static double white(double[] luminance, double[] loss, double least, double density) {
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            sum += luminance[c] * StrictMath.exp(-density * (loss[c] - least));
        }
        return sum;
    }
}
