package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Powers;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Times as the trade writes them. */
class ShutterTimeTest {

    @ParameterizedTest
    @CsvSource({
        "1/60, 0.0166666667",
        "1/60s, 0.0166666667",
        "1/2.5, 0.4",
        "0.8, 0.8",
        "0.8s, 0.8",
        "30s, 30",
        "4m, 240",
        "4m30s, 270",
        "' 4 m 30 s ', 270",
        "1m30, 90",
        "1h, 3600",
        "1h5m10s, 3910",
        "24h, 86400"
    })
    void aTimeIsReadInEverySpelling(String typed, double seconds) {
        assertThat(ShutterTime.parse(typed)).isCloseTo(seconds, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "", "  ", "/60", "1/", "1/0", "1/-2", "-1/2", "0", "0s", "0/5", "-3", "-3s", "2m-1", "-1m5m", "s",
                "m30", "1/x", "long", "8d", "30f", "24h1s", "86401", "NaN"
            })
    void whatIsNoTimeIsRefused(String typed) {
        assertThatThrownBy(() -> ShutterTime.parse(typed))
                .isInstanceOf(UnreadableTextException.class)
                .hasMessageStartingWith("\"" + typed + "\"")
                .hasMessageContaining("1/60");
    }

    /** 1/125 on the dial is 1/128 s (ISO 516 series, from memory); a typed 1/125 keeps its name. */
    @ParameterizedTest
    @CsvSource({
        "0.0078125, 1/125",
        "0.008, 1/125",
        "0.01, 1/100",
        "0.0001, 1/10000",
        "0.000125, 1/8000",
        "0.25, 1/4",
        "0.3, 0.3 s",
        "0.5, 0.5 s",
        "2.5, 2.5 s",
        "8, 8 s",
        "9.94, 9.9 s",
        "9.96, 10 s",
        "32, 32 s",
        "59.4, 59 s",
        "59.6, 1 min",
        "90, 1 min 30 s",
        "240, 4 min",
        "3599.4, 59 min 59 s",
        "3599.6, 1 h",
        "3600, 1 h",
        "3900, 1 h 5 min",
        "7200, 2 h"
    })
    void aTimeIsSaidInWords(double seconds, String words) {
        assertThat(ShutterTime.words(seconds)).isEqualTo(words);
    }

    /** Words round to a tenth of a second or to a whole fraction: 0.35 s as 0.3 is the worst, log₂(0.35/0.3) = 0.222. */
    @Property(tries = 300)
    void wordsSayTheTimeWithinAQuarterOfAStop(@ForAll @DoubleRange(min = -13, max = 16) double log2) {
        double seconds = Powers.exp2(log2);
        String typed = ShutterTime.words(seconds).replace("min", "m");
        assertThat(Powers.log2(ShutterTime.parse(typed) / seconds)).isCloseTo(0, within(0.223));
    }
}
