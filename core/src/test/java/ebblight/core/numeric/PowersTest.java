package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PowersTest {

    @Test
    void wholePowersOfTwoAreExact() {
        assertThat(Powers.exp2(10)).isEqualTo(1024);
        assertThat(Powers.exp2(-3)).isEqualTo(0.125);
        assertThat(Powers.exp2(0)).isEqualTo(1);
    }

    @Property
    void log2UndoesExp2(@ForAll @DoubleRange(min = -60, max = 60) double x) {
        assertThat(Powers.log2(Powers.exp2(x))).isCloseTo(x, within(1e-12));
    }

    @Property
    void powAgreesWithTheJdk(
            @ForAll @DoubleRange(min = 0.01, max = 1000) double base,
            @ForAll @DoubleRange(min = -4, max = 4) double exponent) {
        double expected = Math.pow(base, exponent);
        assertThat(Powers.pow(base, exponent)).isCloseTo(expected, within(1e-13 * expected));
    }

    @Test
    void aNegativeBaseIsRefused() {
        assertThatThrownBy(() -> Powers.pow(-1, 2)).hasMessageContaining("-1");
    }
}
