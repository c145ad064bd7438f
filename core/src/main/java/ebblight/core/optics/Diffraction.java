package ebblight.core.optics;

/** Blur by the aperture itself, for green light of 550 nm. */
public final class Diffraction {

    private static final double WAVELENGTH_MICROMETRES = 0.55;

    private Diffraction() {}

    /** Diameter of the Airy disk in micrometres: 2.44 λ N. */
    public static double airyDiskMicrometres(double fNumber) {
        return 2.44 * WAVELENGTH_MICROMETRES * fNumber;
    }

    /** Finest detail that passes at all, in cycles per millimetre: 1/(λ N). */
    public static double cutoffPerMillimetre(double fNumber) {
        return 1000 / (WAVELENGTH_MICROMETRES * fNumber);
    }

    /** Contrast of a perfect lens at {@code share} of the cutoff, 0 to 1. */
    public static double contrast(double share) {
        if (share >= 1) {
            return 0;
        }
        double root = Math.sqrt(1 - share * share);
        double arc = StrictMath.atan2(root, share);
        return 2 / Math.PI * (arc - share * root);
    }
}
