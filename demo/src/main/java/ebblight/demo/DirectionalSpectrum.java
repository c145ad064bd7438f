package ebblight.demo;

import ebblight.core.numeric.Powers;

/** Variance of the water's height over wavenumber and direction: the wind sea and, where there is one, the swell. */
final class DirectionalSpectrum implements Cascade.Density {

    private static final double DEGREE = Math.PI / 180;
    /** Powers of cos(half angle) over which wind sea and swell spread (Longuet-Higgins 1963, from memory). */
    private static final int WIND_SPREAD = 4;

    private static final int SWELL_SPREAD = 24;
    private static final double SWELL_RELATIVE_WIDTH = 0.09;

    private final WaveSpectrum windSea;
    private final double windRadians;
    private final double windNorm;
    private final double swellRadians;
    private final double swellNorm;
    private final double swellPeak;
    private final double swellVariance;

    DirectionalSpectrum(Weather weather) {
        windSea = WaveSpectrum.fetchLimited(weather.windMetresPerSecond(), weather.fetchMetres());
        windRadians = weather.windDegrees() * DEGREE;
        swellRadians = weather.swellDegrees() * DEGREE;
        windNorm = 1 / spreadIntegral(WIND_SPREAD);
        swellNorm = 1 / spreadIntegral(SWELL_SPREAD);
        swellPeak = 2 * Math.PI / weather.swellPeriodSeconds();
        swellVariance = weather.swellHeightMetres() * weather.swellHeightMetres() / 16;
    }

    private static double spreadIntegral(int power) {
        int steps = 720;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            sum += spread(2 * Math.PI * i / steps, power);
        }
        return sum * 2 * Math.PI / steps;
    }

    /** cos^power(angle / 2), by cos²(a/2) = (1 + cos a)/2. */
    private static double spread(double angle, int power) {
        return Powers.pow(Math.max(0, (1 + StrictMath.cos(angle)) / 2), power / 2.0);
    }

    @Override
    public double at(double kx, double ky) {
        double k = Math.sqrt(kx * kx + ky * ky);
        double direction = StrictMath.atan2(ky, kx);
        double w = Math.sqrt(WaveSpectrum.GRAVITY * k);
        // S(k) dk = S(ω) dω with dω/dk = g / 2ω, spread over a ring of length k dθ
        double ring = WaveSpectrum.GRAVITY / (2 * w) / k;
        double wind = windSea.density(w) * spread(direction - windRadians, WIND_SPREAD) * windNorm;
        return (wind + swell(w) * spread(direction - swellRadians, SWELL_SPREAD) * swellNorm) * ring;
    }

    private double swell(double w) {
        double width = SWELL_RELATIVE_WIDTH * swellPeak;
        double x = (w - swellPeak) / width;
        return Math.abs(x) > 5 ? 0 : swellVariance / (Math.sqrt(2 * Math.PI) * width) * StrictMath.exp(-x * x / 2);
    }

    /** Four standard deviations of wind sea and swell together, metres. */
    double significantHeightMetres() {
        double wind = windSea.significantHeightMetres();
        return Math.sqrt(wind * wind + 16 * swellVariance);
    }
}
