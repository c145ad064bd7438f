package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Against the JDK's own rounding, whose halves are specified (java.lang.Math). */
class RoundingTest {

    @Test
    void halvesGoWhereTheJdkTakesThem() {
        for (double value = -6; value <= 6; value += 0.25) {
            assertThat(Rounding.even(value)).isEqualTo(Math.rint(value) + 0.0);
            assertThat(Rounding.up(value)).isEqualTo(Math.round(value));
        }
        assertThat(Rounding.up(0.49999999999999994)).isZero();
        SplittableRandom dice = new SplittableRandom(3);
        for (int i = 0; i < 10_000; i++) {
            double value = dice.nextDouble(-1e6, 1e6);
            assertThat(Rounding.even(value)).isEqualTo(Math.rint(value) + 0.0);
            assertThat(Rounding.up(value)).isEqualTo(Math.round(value));
        }
        assertThat(Rounding.even(Double.NaN)).isNaN();
        assertThat(Rounding.even(Double.POSITIVE_INFINITY)).isInfinite();
    }
}
