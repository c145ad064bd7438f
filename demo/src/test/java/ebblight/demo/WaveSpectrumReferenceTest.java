package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveSpectrumReferenceTest {

    /**
     * Deep-water dispersion ω² = g k: period, length and speed for g = 9.81 m/s², solved outside the project with
     * scipy's brentq.
     */
    @ParameterizedTest
    @CsvSource({"4, 24.97, 6.243", "6, 56.19, 9.365", "8, 99.89, 12.486", "10, 156.08, 15.608", "12, 224.75, 18.729"})
    void longWavesObeyTheDeepWaterDispersion(double periodSeconds, double lengthMetres, double metresPerSecond) {
        double k = 2 * Math.PI / lengthMetres;
        double omega = WaveSpectrum.dispersion(k);
        assertThat(2 * Math.PI / omega).isCloseTo(periodSeconds, within(periodSeconds * 1e-3));
        assertThat(omega / k).isCloseTo(metresPerSecond, within(metresPerSecond * 1e-3));
    }

    /**
     * Pierson–Moskowitz: H = 0.21 U²/g with the wind at 19.5 m, Tp from ωp = 0.877 g/U (Stewart, Introduction to
     * Physical Oceanography, eqs 16.29 to 16.33); the table's heights are rounded to 1 cm, and 0.21 to two digits.
     */
    @ParameterizedTest
    @CsvSource({"5, 3.75, 0.56", "7.5, 5.62, 1.27", "10, 7.50, 2.25", "15, 11.24, 5.07"})
    void aFullyGrownSeaHasTheHeightAndPeriodOfTheTable(double wind, double periodSeconds, double heightMetres) {
        WaveSpectrum sea = WaveSpectrum.fullyGrown(wind);
        assertThat(2 * Math.PI / sea.peakRadiansPerSecond()).isCloseTo(periodSeconds, within(0.01));
        assertThat(sea.significantHeightMetres()).isCloseTo(heightMetres, within(0.03 * heightMetres));
    }

    /**
     * The peaked spectrum holds 1 / (1 − 0.287 ln γ) times the variance α g² / (5 ωp⁴) of the fully grown one (DNV
     * recommended practice C205, section 3.5.5, from memory).
     */
    @ParameterizedTest
    @CsvSource({"4.5, 6000", "8, 50000", "3, 10000"})
    void thePeakAddsTheVarianceOfTheRecommendedPractice(double wind, double fetchMetres) {
        WaveSpectrum sea = WaveSpectrum.fetchLimited(wind, fetchMetres);
        double grown = sea.alpha() * Math.pow(WaveSpectrum.GRAVITY, 2) / (5 * Math.pow(sea.peakRadiansPerSecond(), 4));
        double height = 4 * Math.sqrt(grown / (1 - 0.287 * Math.log(3.3)));
        assertThat(sea.significantHeightMetres()).isCloseTo(height, within(0.01 * height));
    }

    /**
     * JONSWAP: variance = 1.67e-7 · fetch · U²/g (Stewart, chapter 16, after Hasselmann et al. 1973, from memory). It
     * is a fit of its own beside the fits of α and ωp: the spectrum lies up to a third above it.
     */
    @ParameterizedTest
    @CsvSource({"4.5, 6000", "8, 50000", "3, 10000"})
    void aSeaOfLimitedFetchHasAboutTheHeightOfTheFetchRelation(double wind, double fetchMetres) {
        double height = 4 * Math.sqrt(1.67e-7 * fetchMetres * wind * wind / WaveSpectrum.GRAVITY);
        assertThat(WaveSpectrum.fetchLimited(wind, fetchMetres).significantHeightMetres())
                .isBetween(height, 1.35 * height);
    }

    @Test
    void theSeaOfTheSceneHoldsTheVarianceOfItsSpectrum() {
        for (Weather weather : Weather.ALL) {
            Sea sea = new Sea(weather);
            double variance = 0;
            for (int i = 0; i < 3; i++) {
                variance += sea.cascade(i).heightVariance();
            }
            // few waves carry the peak, so one draw of the sea scatters about its mean
            assertThat(4 * Math.sqrt(variance) / sea.significantHeightMetres())
                    .as(weather.name())
                    .isBetween(0.75, 1.3);
        }
    }
}
