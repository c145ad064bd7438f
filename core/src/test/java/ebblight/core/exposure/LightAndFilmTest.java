package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Light that changes while the shutter is open, and film that answers less the longer it is. */
class LightAndFilmTest {

    /** Calculus: light that halves r times a minute gathers 1/(r ln 2) minutes of its start in all; r 0.3: 4.81 min. */
    @Test
    void fadingLightGathersNoMoreThanItsLimit() {
        ChangingLight light = new ChangingLight(0.3);
        assertThat(light.longestEquivalentSeconds() / 60).isCloseTo(4.81, within(0.005));
        assertThat(light.openFor(288)).isPresent();
        assertThat(light.openFor(289)).isEmpty();
        assertThat(new ChangingLight(-0.3).longestEquivalentSeconds()).isInfinite();
        assertThat(ChangingLight.steady().longestEquivalentSeconds()).isInfinite();
    }

    /** One stop a minute: the first minute gathers (1 − ½)/ln 2 = 0.7213 min, growing light 1/ln 2 = 1.4427 min. */
    @Test
    void aMinuteOfLightThatHalvesOrDoubles() {
        assertThat(new ChangingLight(1).gathered(60)).isCloseTo(60 * 0.5 / Math.log(2), within(1e-9));
        assertThat(new ChangingLight(-1).gathered(60)).isCloseTo(60 / Math.log(2), within(1e-9));
        assertThat(new ChangingLight(1).openFor(60 * 0.5 / Math.log(2)).orElseThrow())
                .isCloseTo(60, within(1e-9));
        assertThat(new ChangingLight(-1).openFor(60 / Math.log(2)).orElseThrow())
                .isCloseTo(60, within(1e-9));
        assertThat(new ChangingLight(-1).meanStops(60)).isPositive();
    }

    @Property(tries = 50)
    void steadyLightIsTakenAsItIs(@ForAll @DoubleRange(min = 0.01, max = 3600) double seconds) {
        ChangingLight steady = ChangingLight.steady();
        assertThat(steady.gathered(seconds)).isEqualTo(seconds);
        assertThat(steady.openFor(seconds)).hasValue(seconds);
        assertThat(steady.meanStops(seconds)).isZero();
        // and light that hardly changes is hardly another
        assertThat(new ChangingLight(1e-7).gathered(seconds)).isCloseTo(seconds, within(1e-5 * seconds));
    }

    @Test
    void lightChangesByFiveStopsAMinuteAtMost() {
        assertThat(new ChangingLight(5).stopsPerMinute()).isEqualTo(5);
        assertThat(new ChangingLight(-5).stopsPerMinute()).isEqualTo(-5);
        for (double rate : new double[] {5.01, -5.01, Double.NaN}) {
            assertThatThrownBy(() -> new ChangingLight(rate)).hasMessageContaining("5 stops a minute");
        }
    }

    /** A maker's worked example, as quoted by a dealer: exponent 1.31, metered 10 s, expose 20.4 s. */
    @Test
    void filmIsExposedLonger() {
        assertThat(new Reciprocity(1.31).corrected(10)).isCloseTo(20.4, within(0.05));
        assertThat(new Reciprocity(1.31).corrected(0.5)).isEqualTo(0.5);
        assertThat(Reciprocity.none().corrected(600)).isEqualTo(600);
        assertThat(new Reciprocity(2).corrected(3)).isCloseTo(9, within(1e-9));
        for (double exponent : new double[] {0.99, 2.01, Double.NaN}) {
            assertThatThrownBy(() -> new Reciprocity(exponent)).hasMessageContaining("between 1 and 2");
        }
    }
}
