package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Meter readings and exposures: what can be typed, and how a reading ages. */
class ReadingTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "f/16 1/100 ISO100",
                "ISO 100 1/100 f/16",
                "iso100, f16; 1/100",
                "F/16\t1/100\niso 100",
                "f/ 16 0.01s ISO100",
                "f/16 1/100s ISO100"
            })
    void aReadingIsReadInAnyOrder(String typed) {
        MeterReading reading = MeterReading.parse(typed);
        assertThat(reading.fNumber()).isEqualTo(16);
        assertThat(reading.seconds()).isCloseTo(0.01, within(1e-15));
        assertThat(reading.iso()).isEqualTo(100);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "f/16 1/100",
                "f/16 ISO100",
                "1/100 ISO100",
                "f/0 1/100 ISO100",
                "f/-8 1/100 ISO100",
                "f/16 1/100 ISO0",
                "f/16 dusk ISO100",
                "f/x 1/100 ISO100",
                "f/16 1/100 ISO"
            })
    void anUnfinishedReadingIsToldWhole(String typed) {
        assertThatThrownBy(() -> MeterReading.parse(typed))
                .isInstanceOf(UnreadableTextException.class)
                .hasMessageStartingWith("\"" + typed + "\"")
                .hasMessageContaining("f/16 1/100 ISO100");
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, 1, 100, true",
        "0.49, 1, 100, false",
        "128, 1, 100, true",
        "129, 1, 100, false",
        "8, 0.00001, 100, true",
        "8, 0.000001, 100, false",
        "8, 86400, 100, true",
        "8, 86401, 100, false",
        "8, 1, 1, true",
        "8, 1, 0.9, false",
        "8, 1, 1000000, true",
        "8, 1, 1000001, false",
        "NaN, 1, 100, false"
    })
    void aReadingLiesWithinWhatCanBe(double fNumber, double seconds, double iso, boolean possible) {
        if (possible) {
            assertThatCode(() -> new MeterReading(fNumber, seconds, iso)).doesNotThrowAnyException();
        } else {
            assertThatThrownBy(() -> new MeterReading(fNumber, seconds, iso))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must lie between");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.000001, 0.5, 1, true",
        "0.0000009, 8, 100, false",
        "86400, 128, 1000000, true",
        "86401, 8, 100, false",
        "1, 0.4, 100, false",
        "1, 129, 100, false",
        "1, 8, 0.9, false",
        "1, 8, 1000001, false"
    })
    void anExposureLiesWithinWhatCanBe(double seconds, double fNumber, double iso, boolean possible) {
        if (possible) {
            assertThatCode(() -> new Exposure(seconds, fNumber, iso)).doesNotThrowAnyException();
        } else {
            assertThatThrownBy(() -> new Exposure(seconds, fNumber, iso))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must lie between");
        }
    }

    /** f/1 for 2^−v s at ISO 100 is EV v (ISO 2720, from memory). */
    private static DatedReading dated(double exposureValue, double atSeconds) {
        return new DatedReading(new MeterReading(1, Math.pow(2, -exposureValue), 100), atSeconds);
    }

    /** EV 12 and ten minutes later EV 10: a fifth of a stop a minute; each is off by a sixth, √2/6 in ten minutes. */
    @Test
    void twoReadingsTellTheRateOfTheLight() {
        DatedReading.Rate dusk = dated(12, 1000).rateTo(dated(10, 1600));
        assertThat(dusk.stopsPerMinute()).isCloseTo(0.2, within(1e-12));
        assertThat(dusk.rangeStopsPerMinute()).isCloseTo(Math.sqrt(2) / 60, within(1e-12));
        assertThat(dated(4, 0).rateTo(dated(6, 600)).stopsPerMinute()).isCloseTo(-0.2, within(1e-12));
        assertThat(dated(9, 0).rateTo(dated(8.5, 30)).stopsPerMinute()).isCloseTo(1, within(1e-12));
    }

    @Test
    void readingsTooCloseTellNoRate() {
        assertThatThrownBy(() -> dated(12, 0).rateTo(dated(11, 29)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("half a minute");
        assertThatThrownBy(() -> dated(12, 600).rateTo(dated(11, 0))).hasMessageContaining("half a minute");
        assertThatThrownBy(() -> dated(12, Double.POSITIVE_INFINITY)).hasMessageContaining("finite");
    }

    @Test
    void aReadingIsCarriedForwardAtTheRate() {
        // five minutes at a fifth of a stop a minute: one stop
        assertThat(dated(12, 1000).exposureValueAt(1300, 0.2)).isCloseTo(11, within(1e-9));
        assertThat(dated(12, 1000).exposureValueAt(700, 0.2)).isCloseTo(13, within(1e-9));
    }

    /** Common practice: by day a reading holds half an hour, at dusk (the sky below EV 12) five minutes. */
    @Test
    void aReadingAgesFasterAtDusk() {
        assertThat(dated(15, 0).staleAfterMinutes()).isEqualTo(30);
        assertThat(dated(12, 0).staleAfterMinutes()).isEqualTo(30);
        assertThat(dated(11.9, 0).staleAfterMinutes()).isEqualTo(5);
        assertThat(dated(9, 100).staleAt(400)).isFalse();
        assertThat(dated(9, 100).staleAt(401)).isTrue();
        assertThat(dated(15, 100).staleAt(1900)).isFalse();
        assertThat(dated(15, 100).staleAt(1901)).isTrue();
    }
}
