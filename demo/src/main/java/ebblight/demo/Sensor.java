package ebblight.demo;

import ebblight.core.numeric.RgbPicture;

/**
 * A small sensor: photon noise of 12 000 electrons at white and ISO 100, 3 electrons of read noise, 8 bits with the
 * sRGB curve. Light above white is cut off.
 *
 * @param iso speed, 50 to 25 600
 */
public record Sensor(double iso) {

    private static final double FULL_WELL_ELECTRONS = 12_000;
    private static final double READ_ELECTRONS = 3;

    public Sensor {
        if (!(iso >= 50 && iso <= 25_600)) {
            throw new IllegalArgumentException("iso must be 50 to 25600, was " + iso);
        }
    }

    /** Variance of the noise at a linear level, before coding. */
    public double variance(double level) {
        double well = FULL_WELL_ELECTRONS * 100 / iso;
        return (Math.max(0, level) * well + READ_ELECTRONS * READ_ELECTRONS) / (well * well);
    }

    /** Red, green, blue codes of a noisy frame, pixel by pixel; the noise depends on {@code seed} only. */
    public byte[] srgb8(RgbPicture frame, long seed) {
        Dice dice = new Dice(seed);
        int n = frame.width() * frame.height();
        byte[] codes = new byte[3 * n];
        for (int p = 0; p < n; p++) {
            for (int c = 0; c < 3; c++) {
                double level = frame.plane(c)[p];
                codes[3 * p + c] = Srgb.code(level + dice.quickGaussian() * Math.sqrt(variance(level)));
            }
        }
        return codes;
    }
}
