package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Decimals as people write them: halves away from zero, no trailing zeros, no minus before a zero. */
class NumbersTest {

    @ParameterizedTest
    @CsvSource({
        "1.25, 1, 1.3",
        "-1.25, 1, -1.3",
        "2, 1, 2",
        "2.04, 1, 2",
        "0.04, 1, 0",
        "-0.04, 1, 0",
        "-0.06, 1, -0.1",
        "0.5, 0, 1",
        "100, 2, 100",
        "10.5, 3, 10.5",
        "1.007, 3, 1.007",
        "0, 2, 0"
    })
    void roundsAsOnPaper(double value, int decimals, String text) {
        assertThat(Numbers.shortest(value, decimals)).isEqualTo(text);
    }

    /** Against the decimal arithmetic of the platform, which core does without. */
    @Property(tries = 300)
    void isTheNearestDecimalInItsShortestForm(
            @ForAll @DoubleRange(min = -1e5, max = 1e5) double value, @ForAll @IntRange(max = 4) int decimals) {
        String text = Numbers.shortest(value, decimals);
        BigDecimal unit = BigDecimal.ONE.movePointLeft(decimals);
        // a double just beside a half may go either way: half a unit and the width of a double
        BigDecimal limit = unit.divide(BigDecimal.valueOf(2)).add(BigDecimal.valueOf(1e-9));
        assertThat(new BigDecimal(text).subtract(new BigDecimal(value)).abs()).isLessThanOrEqualTo(limit);
        BigDecimal read = new BigDecimal(text);
        assertThat(read.setScale(decimals, RoundingMode.UNNECESSARY)).isEqualByComparingTo(read);
        assertThat(text)
                .isEqualTo(read.signum() == 0 ? "0" : read.stripTrailingZeros().toPlainString());
    }

    /** Letters that a compiler takes for a kind of number are slips of the finger here. */
    @ParameterizedTest
    @ValueSource(strings = {"6f", "6D", "0x10", "1_000", "six", "", "-", "NaN", "Infinity", "1e400"})
    void whatIsNoDecimalIsRefused(String typed) {
        assertThatThrownBy(() -> Numbers.parse(typed, "typed " + typed, "a number"))
                .isInstanceOf(UnreadableTextException.class)
                .hasMessage("\"typed " + typed + "\" cannot be read; expected a number");
    }

    @ParameterizedTest
    @CsvSource({"6, 6", "' 0.5 ', 0.5", "-1.5, -1.5", "1e-3, 0.001", "2E2, 200", "+3, 3"})
    void aDecimalIsRead(String typed, double value) {
        assertThat(Numbers.parse(typed, typed, "a number")).isEqualTo(value);
    }
}
