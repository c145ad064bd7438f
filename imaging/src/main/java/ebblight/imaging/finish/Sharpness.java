package ebblight.imaging.finish;

import java.util.Locale;

/**
 * Edges for eyes at a distance and for a paper: what is strengthened is one cycle of the finest detail that eyes of full
 * sight tell from there (30 cycles a degree), by as much as the surface spreads.
 *
 * @param viewingCentimetres from the eye to the print
 */
public record Sharpness(double viewingCentimetres, Paper paper) {

    /** Surfaces; by how much edges are strengthened on each is judged by eye, to be proved on a test strip. */
    public enum Paper {
        GLOSS(0.25),
        SATIN(0.3),
        MATT(0.4),
        COTTON(0.5);

        private final double amount;

        Paper(double amount) {
            this.amount = amount;
        }

        public double amount() {
            return amount;
        }

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private static final double CYCLES_IN_DEGREE = 30;
    /** Rise of a Gaussian edge from 10 to 90 % over its sigma. */
    private static final double RISE = 2.5631;

    public Sharpness {
        if (!(viewingCentimetres >= 10 && viewingCentimetres <= 1000)) {
            throw new IllegalArgumentException(
                    "viewingCentimetres must lie between 10 and 1000, was " + viewingCentimetres);
        }
    }

    /** Width on paper of what is strengthened, in millimetres. */
    public double millimetres() {
        return 10 * viewingCentimetres * StrictMath.tan(Math.PI / 180 / CYCLES_IN_DEGREE);
    }

    /** Sigma in pixels on a print of so many pixels a centimetre. */
    double sigma(double pixelsPerCentimetre) {
        return millimetres() / 10 * pixelsPerCentimetre / RISE;
    }
}
