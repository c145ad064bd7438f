package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FresnelReferenceTest {

    /** Reflectance of water for unpolarised light, percent by angle (Smithsonian Meteorological Tables, from memory). */
    @ParameterizedTest
    @CsvSource({"0, 2.0", "40, 2.5", "50, 3.4", "60, 6.0", "70, 13.4", "80, 34.8", "85, 58.4", "90, 100"})
    void waterReflectsWhatTheTableSays(double degrees, double percent) {
        double cosine = Math.max(0, Math.cos(Math.toRadians(degrees)));
        assertThat(100 * Fresnel.reflectance(cosine)).isCloseTo(percent, within(0.1 + 0.004 * percent));
        assertThat(100 * Fresnel.fast((float) cosine))
                .isCloseTo((float) percent, within((float) (0.13 + 0.004 * percent)));
    }

    /** At Brewster's angle, tan = n, only half the light is reflected: ½ ((n² − 1) / (n² + 1))² (Hecht, Optics). */
    @Test
    void atBrewstersAngleOneHalfOfTheLightGoesInWhole() {
        double n2 = Fresnel.WATER * Fresnel.WATER;
        double expected = Math.pow((n2 - 1) / (n2 + 1), 2) / 2;
        assertThat(Fresnel.reflectance(1 / Math.sqrt(1 + n2))).isCloseTo(expected, within(1e-12));
    }
}
