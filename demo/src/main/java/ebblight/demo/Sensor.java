package ebblight.demo;

import ebblight.core.numeric.RgbPicture;

/**
 * A small sensor: photon noise of 12 000 electrons at white and ISO 100, 3 electrons of read noise, 8 bits with the
 * sRGB curve.
 */
public record Sensor(double iso) {

    private static final double FULL_WELL_ELECTRONS = 12_000;
    private static final double READ_ELECTRONS = 3;

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
                double noisy = level + dice.gaussian() * Math.sqrt(variance(level));
                codes[3 * p + c] = (byte) Math.round(255 * encode(Math.max(0, Math.min(1, noisy))));
            }
        }
        return codes;
    }

    private static double encode(double l) {
        return l <= 0.0031308 ? 12.92 * l : 1.055 * StrictMath.exp(StrictMath.log(l) / 2.4) - 0.055;
    }
}
