package ebblight.demo;

import ebblight.core.numeric.Powers;

/**
 * Variance of the water's height by angular frequency, m²·s, in deep water:
 * α g² ω⁻⁵ exp(−1.25 (ωp/ω)⁴) γ^r with r = exp(−(ω − ωp)² / (2 σ² ωp²)), σ = 0.07 below and 0.09 above the peak.
 * Hasselmann et al. 1973 (JONSWAP), as given by Stewart, Introduction to Physical Oceanography, chapter 16; γ = 1 is
 * the fully grown sea of Pierson and Moskowitz 1964.
 *
 * @param alpha energy of the tail, 0.004 to 0.03
 * @param peakRadiansPerSecond angular frequency of the peak
 * @param gamma height of the peak over that of the fully grown sea
 */
record WaveSpectrum(double alpha, double peakRadiansPerSecond, double gamma) {

    /** Standard gravity, m/s². */
    static final double GRAVITY = 9.81;

    /** Wavenumber at which surface tension equals gravity in the dispersion of clean water, rad/m (from memory). */
    private static final double CAPILLARY = 370;

    WaveSpectrum {
        if (!(alpha > 0 && alpha < 0.1) || !(peakRadiansPerSecond > 0) || !(gamma >= 1 && gamma < 10)) {
            throw new IllegalArgumentException(
                    "no such sea: α " + alpha + ", peak " + peakRadiansPerSecond + " rad/s, γ " + gamma);
        }
    }

    /** The sea that a wind has raised over a limited stretch of water (JONSWAP fetch relations, γ = 3.3). */
    static WaveSpectrum fetchLimited(double windMetresPerSecond, double fetchMetres) {
        double u = windMetresPerSecond;
        double peak = 22 * Powers.pow(GRAVITY * GRAVITY / (u * fetchMetres), 1.0 / 3);
        double alpha = 0.076 * Powers.pow(u * u / (fetchMetres * GRAVITY), 0.22);
        return new WaveSpectrum(alpha, peak, 3.3);
    }

    /** The sea that a steady wind at 10 m height raises in the end (Pierson and Moskowitz; Stewart 16.29 to 16.33). */
    static WaveSpectrum fullyGrown(double windMetresPerSecond) {
        return new WaveSpectrum(0.0081, 0.877 * GRAVITY / (1.026 * windMetresPerSecond), 1);
    }

    /** Variance density at an angular frequency in rad/s, m²·s. */
    double density(double radiansPerSecond) {
        double w = radiansPerSecond;
        if (w <= 0) {
            return 0;
        }
        double wp = peakRadiansPerSecond;
        double ratio = wp / w;
        double width = (w <= wp ? 0.07 : 0.09) * wp;
        double peakedness = StrictMath.exp(-(w - wp) * (w - wp) / (2 * width * width));
        return alpha
                * GRAVITY
                * GRAVITY
                / (w * w * w * w * w)
                * StrictMath.exp(-1.25 * ratio * ratio * ratio * ratio)
                * Powers.pow(gamma, peakedness);
    }

    /** Four standard deviations of the height, metres; integrated to within 0.1 %. */
    double significantHeightMetres() {
        double variance = 0;
        double step = 0.002;
        for (double x = -1.5; x < 3; x += step) {
            double w = peakRadiansPerSecond * StrictMath.exp(x + step / 2);
            variance += density(w) * w * step;
        }
        return 4 * Math.sqrt(variance);
    }

    /** Angular frequency of a wave of wavenumber {@code k} rad/m in deep water: ω² = g k (1 + (k/370)²). */
    static double dispersion(double k) {
        double c = k / CAPILLARY;
        return Math.sqrt(GRAVITY * k * (1 + c * c));
    }
}
