package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Dial times are powers of two in thirds (ISO 516 series, from memory; common practice: 30 s is 32 s, 15 s is 16 s). */
class ExposureReferenceTest {

    @ParameterizedTest
    @CsvSource({
        "30,32",
        "15,16",
        "20,20.1587",
        "0.0166667,0.015625",
        "0.008,0.0078125",
        "0.125,0.125",
        "8,8",
        "16,16",
        "47.3,47.3",
        "240,240"
    })
    void theTimeOfADialIsWhatItIs(double written, double exact) {
        assertThat(ThirdStops.exactSeconds(written)).isCloseTo(exact, within(1e-4 * exact));
    }

    /** EV100 = log2(N²/t) − log2(S/100): f/8 for 1/60 s (1/64) at ISO 100 is 12 exactly. */
    @Test
    void exposureValueOfExactSettings() {
        assertThat(Exposure.fromFile(1 / 60.0, 8, 100).exposureValue100()).isCloseTo(12, within(1e-9));
        Exposure metered = Exposure.fromFile(1 / 8.0, 11, 100);
        assertThat(Exposure.fromFile(30, 11, 100).stopsOver(metered)).isCloseTo(8, within(1e-9));
        assertThat(Exposure.fromFile(30, 11, 400).stopsOver(metered)).isCloseTo(10, within(1e-9));
    }
}
