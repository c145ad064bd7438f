package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A typed table of waters, half a cosine between each two, worked by hand. */
class TideTableTest {

    private static final Instant START = Instant.parse("2027-01-10T00:00:00Z");

    private static double hours(double hours) {
        return Epoch.seconds(START) + 3600 * hours;
    }

    /** Low and high in turn, from low: hours and metres. */
    private static TideTable table(double... hoursAndMetres) {
        List<TideExtreme> waters = new ArrayList<>();
        for (int k = 0; k < hoursAndMetres.length; k += 2) {
            waters.add(water(hoursAndMetres[k], hoursAndMetres[k + 1], k % 4 == 2));
        }
        return new TideTable(waters);
    }

    private static TideExtreme water(double hour, double metres, boolean high) {
        return new TideExtreme(
                START.plusSeconds(Math.round(3600 * hour)),
                metres,
                high ? TideExtreme.Kind.HIGH : TideExtreme.Kind.LOW);
    }

    /** 0 to 6 m in 6 h, down to 1 m in 7 h, up to 5 m in 5 h. */
    private static TideTable uneven() {
        return table(0, 0, 6, 6, 13, 1, 18, 5);
    }

    @Test
    void theWaterStandsAsTypedAtEveryWaterAndHalfWayBetween() {
        TideTable table = uneven();
        double[][] known = {{0, 0}, {3, 3}, {6, 6}, {9.5, 3.5}, {13, 1}, {15.5, 3}, {18, 5}};
        for (double[] each : known) {
            assertThat(table.heightMetres(hours(each[0]))).isCloseTo(each[1], within(1e-9));
        }
        // fastest half way: half the range times π over the hours between
        assertThat(table.risingMetresPerHour(hours(3))).isCloseTo(3 * Math.PI / 6, within(1e-9));
        assertThat(table.risingMetresPerHour(hours(9.5))).isCloseTo(-2.5 * Math.PI / 7, within(1e-9));
        assertThat(table.risingMetresPerHour(hours(15.5))).isCloseTo(2 * Math.PI / 5, within(1e-9));
        assertThat(table.risingMetresPerHour(hours(6))).isCloseTo(0, within(1e-9));
        // a third of the way to the turn: cos 30 degrees of the half range
        assertThat(table.heightMetres(hours(1))).isCloseTo(3 - 3 * Math.cos(Math.PI / 6), within(1e-9));
        assertThat(table.risingMetresPerHour(hours(1)))
                .isCloseTo(3 * Math.PI / 6 * Math.sin(Math.PI / 6), within(1e-9));
        assertThat(table.extremes()).hasSize(4);
    }

    /** The first tide is the fastest (3 m · π/6 an hour), and bends most: 3 · (π/6)² against 2 · (π/5)². */
    @Test
    void itsBoundsAreThoseOfTheSteepestTide() {
        assertThat(uneven().fastestMetresPerHour()).isCloseTo(3 * Math.PI / 6, within(1e-9));
        assertThat(uneven().steepestMetresPerHourSquared()).isCloseTo(3 * Math.PI * Math.PI / 36, within(1e-9));
        assertThat(table(0, 0, 6, 1, 12, 0, 17, 4).fastestMetresPerHour()).isCloseTo(2 * Math.PI / 5, within(1e-9));
    }

    @Test
    void nothingIsToldBeyondTheTable() {
        TideTable table = uneven();
        assertThat(table.knows(hours(0))).isTrue();
        assertThat(table.knows(hours(18))).isTrue();
        assertThat(table.knows(hours(0) - 1)).isFalse();
        assertThat(table.knows(hours(18) + 1)).isFalse();
        assertThatThrownBy(() -> table.heightMetres(hours(19)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2027-01-10T19:00:00Z")
                .hasMessageContaining("2027-01-10T00:00:00Z to 2027-01-10T18:00:00Z");
    }

    @Test
    void aTableIsCheckedAsItIsTyped() {
        assertThatThrownBy(() -> table(0, 0)).hasMessageContaining("at least two waters");
        assertThatCode(() -> table(0, 0, 6, 1)).doesNotThrowAnyException();
        assertThatThrownBy(() -> table(6, 0, 0, 1)).hasMessageContaining("order of time");
        assertThatThrownBy(() -> table(6, 0, 6, 1)).hasMessageContaining("order of time");
        assertThatThrownBy(() -> new TideTable(List.of(water(0, 1, false), water(6, 2, false))))
                .hasMessageContaining("two low waters in a row");
        assertThatCode(() -> table(0, 0, 30, 1)).doesNotThrowAnyException();
        assertThatThrownBy(() -> table(0, 0, 30.1, 1)).hasMessageContaining("30 h");
        assertThatThrownBy(() -> table(0, 1, 6, 1)).hasMessageContaining("does not stand above");
        assertThatThrownBy(() -> table(0, 2, 6, 1)).hasMessageContaining("does not stand above");
        assertThatThrownBy(() -> table(0, 0, 6, 5, 12, 6)).hasMessageContaining("does not stand above");
        assertThatCode(() -> table(0, -30, 6, 30)).doesNotThrowAnyException();
        assertThatThrownBy(() -> table(0, -30.1, 6, 1)).hasMessageContaining("30 m");
        assertThatThrownBy(() -> table(0, 0, 6, Double.NaN)).hasMessageContaining("30 m");
    }

    @Test
    void watersOfASpanAreThoseTyped() {
        List<TideExtreme> within = TideExtreme.between(uneven(), hours(6), hours(13));
        assertThat(within).containsExactly(water(6, 6, true), water(13, 1, false));
        assertThat(TideExtreme.between(uneven(), hours(6) + 1, hours(13) - 1)).isEmpty();
    }

    @Test
    void wordsAreRead() {
        assertThat(TideExtreme.Kind.of("high")).isEqualTo(TideExtreme.Kind.HIGH);
        assertThat(TideExtreme.Kind.of("low")).isEqualTo(TideExtreme.Kind.LOW);
        assertThat(TideExtreme.Kind.HIGH.word()).isEqualTo("high");
        assertThatThrownBy(() -> TideExtreme.Kind.of("mid")).hasMessageContaining("neither high nor low");
        for (TideSpans.Direction direction : TideSpans.Direction.values()) {
            assertThat(TideSpans.Direction.of(direction.word())).isEqualTo(direction);
        }
        assertThatThrownBy(() -> TideSpans.Direction.of("up")).hasMessageContaining("rising, falling or any");
    }

    @ParameterizedTest
    @CsvSource({
        "RISING, 1, true",
        "RISING, 0, false",
        "RISING, -1, false",
        "FALLING, -1, true",
        "FALLING, 0, false",
        "FALLING, 1, false",
        "ANY, 0, true",
        "ANY, -1, true"
    })
    void waterRunsOneWay(TideSpans.Direction direction, double rate, boolean holds) {
        assertThat(direction.holds(rate)).isEqualTo(holds);
    }

    /** Between 3 and 6 m of the first tide: from half tide at three hours, to the half tide after it at 9.5 h less a little. */
    @Test
    void spansMeetTheirHeights() {
        TideTable table = uneven();
        List<TideSpans.Span> rising = TideSpans.between(table, hours(0), hours(18), 3, 7, TideSpans.Direction.RISING);
        assertThat(rising).hasSize(2);
        assertThat(Epoch.seconds(rising.get(0).from())).isCloseTo(hours(3), within(1.0));
        assertThat(Epoch.seconds(rising.get(0).to())).isCloseTo(hours(6), within(1.0));
        assertThat(Epoch.seconds(rising.get(1).from())).isCloseTo(hours(15.5), within(1.0));
        // it goes on to the end of what was asked
        assertThat(Epoch.seconds(rising.get(1).to())).isEqualTo(hours(18));
        assertThat(TideSpans.between(table, hours(0), hours(18), 6.5, 9, TideSpans.Direction.ANY))
                .isEmpty();
    }

    /** The limits as the messages state them. */
    @ParameterizedTest
    @CsvSource({
        "30, 0.5, 0, ''",
        "-30, 30, 3600, ''",
        "30.1, 1, 0, lowest point",
        "-30.1, 1, 0, lowest point",
        "0, 0.49, 0, margin",
        "0, 30.1, 0, margin",
        "0, NaN, 0, margin",
        "0, 1, -1, packing",
        "0, 1, 3601, packing"
    })
    void aGuardLiesWithinWhatCanBe(double lowest, double margin, double packing, String refused) {
        if (refused.isEmpty()) {
            assertThatCode(() -> new WaterGuard(uneven(), lowest, margin, packing))
                    .doesNotThrowAnyException();
        } else {
            assertThatThrownBy(() -> new WaterGuard(uneven(), lowest, margin, packing))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining(refused);
        }
    }

    @Test
    void anExposureTakesADayAtMost() {
        WaterGuard guard = WaterGuard.of(uneven(), 4, OptionalDouble.empty(), 1, Optional.empty(), 0);
        assertThat(guard.at(hours(1), 86_400, 86_400)).isInstanceOf(WaterGuard.Verdict.LeaveBy.class);
        double[][] bad = {{-1, 0}, {86_401, 0}, {0, -1}, {0, 86_401}, {Double.NaN, 0}};
        for (double[] b : bad) {
            assertThatThrownBy(() -> guard.at(hours(1), b[0], b[1])).hasMessageContaining("0 to 86400 s");
        }
    }

    /** Right at the moment when water and margin reach the point it is gone, not a minute later. */
    @Test
    void theMomentItselfIsTooLate() {
        WaterGuard guard = WaterGuard.of(uneven(), 4, OptionalDouble.empty(), 1, Optional.empty(), 0);
        assertThat(guard.at(hours(3) + 1, 0, 0)).isEqualTo(new WaterGuard.Verdict.Gone(true));
        // the lowest water is no rising one
        WaterGuard high = WaterGuard.of(uneven(), 12, OptionalDouble.empty(), 1, Optional.empty(), 0);
        WaterGuard.Verdict.NotReached told = (WaterGuard.Verdict.NotReached) high.at(hours(0), 0, 0);
        assertThat(told.rising()).isFalse();
        assertThat(Epoch.seconds(told.before())).isBetween(hours(17.8), hours(18));
    }

    /** Swell of 0 to 20 m and 1 to 30 s; deep-water length 1.56 T² m (REFERENCES: dispersion, T 4 s: 24.97 m). */
    @ParameterizedTest
    @CsvSource({
        "0, 1, ''",
        "20, 30, ''",
        "-0.1, 5, 0 to 20 m",
        "20.1, 5, 0 to 20 m",
        "1, 0.9, 1 to 30 s",
        "1, 30.1, 1 to 30 s"
    })
    void swellLiesWithinWhatCanBe(double height, double period, String refused) {
        if (refused.isEmpty()) {
            assertThat(new Swell(height, period).lengthMetres())
                    .isCloseTo(1.5613 * period * period, within(0.05 * period));
        } else {
            assertThatThrownBy(() -> new Swell(height, period)).hasMessageContaining(refused);
        }
    }
}
