package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Epoch;
import ebblight.core.sky.Place;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stations whose curve can be worked by hand: S2 runs 30 degrees an hour, has no node and is highest at noon and midnight. */
class StationTest {

    private static final double START = Epoch.seconds(Instant.parse("2026-06-01T00:00:00Z"));

    private static Station station(double mean, Station.Harmonic... harmonics) {
        return new Station("x", "x", "", Place.of(48, -2), "MSL", mean, List.of(harmonics), "", "");
    }

    private static Station.Harmonic harmonic(String name, double metres, double degrees) {
        return new Station.Harmonic(name, metres, degrees);
    }

    /** V of S2 is twice the hour angle: 360 degrees at midnight and 0, 3, 6 … h on it runs down a cosine. */
    @Test
    void aSolarTideIsACosineOfTheHour() {
        HarmonicTide curve = station(5, harmonic("S2", 2, 0)).curve(START, START + 86_400);
        for (int hour = 0; hour <= 24; hour++) {
            double angle = Math.PI * hour / 6;
            double at = START + 3600 * hour;
            assertThat(curve.heightMetres(at)).isCloseTo(5 + 2 * Math.cos(angle), within(1e-6));
            assertThat(curve.risingMetresPerHour(at)).isCloseTo(-2 * Math.PI / 6 * Math.sin(angle), within(1e-6));
        }
        assertThat(curve.fastestMetresPerHour()).isCloseTo(2 * Math.PI / 6, within(1e-9));
        assertThat(curve.steepestMetresPerHourSquared()).isCloseTo(2 * Math.PI * Math.PI / 36, within(1e-9));
        assertThat(curve.knows(START - 1e9)).isTrue();
        // κ of 60 degrees is two hours later
        HarmonicTide late = station(5, harmonic("S2", 2, 60)).curve(START, START);
        assertThat(late.heightMetres(START + 7200)).isCloseTo(7, within(1e-6));
        assertThat(late.heightMetres(START + 7200 - 5 * 86_400)).isCloseTo(7, within(1e-6));
    }

    /** Bounds add: two constituents never run faster than both at their fastest, and nearly reach it. */
    @Test
    void boundsHoldAtEveryMinute() {
        HarmonicTide curve =
                station(0, harmonic("M2", 2, 0), harmonic("S2", 1, 40)).curve(START, START + 20 * 86_400);
        double fastest = 0;
        double steepest = 0;
        double before = curve.risingMetresPerHour(START);
        for (int minute = 1; minute < 20 * 1440; minute++) {
            double now = curve.risingMetresPerHour(START + 60.0 * minute);
            fastest = Math.max(fastest, Math.abs(now));
            steepest = Math.max(steepest, 60 * Math.abs(now - before));
            before = now;
        }
        assertThat(curve.fastestMetresPerHour()).isBetween(fastest, 1.02 * fastest);
        assertThat(curve.steepestMetresPerHourSquared()).isBetween(steepest - 0.05, 1.05 * steepest);
    }

    /** Defant's form number (from memory): (K1 + O1)/(M2 + S2) = (0.3 + 0.2)/(1.5 + 0.5). */
    @Test
    void theFormNumberTellsTheKindOfTide() {
        Station station = station(
                0, harmonic("K1", 0.3, 0), harmonic("O1", 0.2, 0), harmonic("M2", 1.5, 0), harmonic("S2", 0.5, 0));
        assertThat(station.formNumber()).isCloseTo(0.25, within(1e-12));
        assertThat(station.amplitudeMetres("N2")).isZero();
        assertThat(station(0, harmonic("lambda2", 0.09, 0)).amplitudeMetres("LAM2"))
                .isEqualTo(0.09);
    }

    @Test
    void whatIsNotKnownIsLeftOutAndNamed() {
        Station station = station(0, harmonic("S2", 1, 0), harmonic("3L2", 0.5, 0), harmonic("S4", 0, 0));
        assertThat(station.unknown()).extracting(Station.Harmonic::name).containsExactly("3L2");
        assertThat(station.curve(START, START).heightMetres(START)).isCloseTo(1, within(1e-6));
    }

    /** The limits as the messages state them. */
    @ParameterizedTest
    @CsvSource({
        "0, -360, 20, ''",
        "20, 720, -20, ''",
        "-0.1, 0, 0, amplitude",
        "20.1, 0, 0, amplitude",
        "NaN, 0, 0, amplitude",
        "1, -361, 0, phase",
        "1, 721, 0, phase",
        "1, 0, 20.1, mean sea level",
        "1, 0, -20.1, mean sea level"
    })
    void aStationLiesWithinWhatCanBe(double metres, double degrees, double mean, String refused) {
        if (refused.isEmpty()) {
            assertThatCode(() -> station(mean, harmonic("M2", metres, degrees))).doesNotThrowAnyException();
        } else {
            assertThatThrownBy(() -> station(mean, harmonic("M2", metres, degrees)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining(refused);
        }
        assertThatThrownBy(() -> station(0)).hasMessageContaining("no harmonic constants");
    }

    /** At springs the arguments of M2 and S2 less their phases agree, at neaps they are half a turn apart (by definition). */
    @Test
    void springsAreWhereMoonAndSunAgree() {
        Station station = station(0, harmonic("M2", 1.4, 109.2), harmonic("S2", 0.2, 146.2));
        List<SpringsAndNeaps.Turn> turns = SpringsAndNeaps.between(station, START, START + 60 * 86_400);
        // half a synodic month of 29.53 days has one of each
        assertThat(turns).hasSizeBetween(7, 9);
        for (SpringsAndNeaps.Turn turn : turns) {
            double at = Epoch.seconds(turn.time());
            double apart = phase("S2", at) - 146.2 - phase("M2", at) + 109.2 + (turn.springs() ? 0 : 180);
            double off = MeanLongitudes.wrap(apart + 180) - 180;
            // the moment is sought to the minute, which is 0.02 degrees
            assertThat(off).as(turn.toString()).isCloseTo(0, within(0.03));
        }
        for (String missing : new String[] {"M2", "S2"}) {
            Station.Harmonic[] left = Stream.of("M2", "S2")
                    .filter(name -> !name.equals(missing))
                    .map(name -> harmonic(name, 1, 0))
                    .toArray(Station.Harmonic[]::new);
            assertThat(SpringsAndNeaps.between(station(0, left), START, START + 60 * 86_400))
                    .isEmpty();
        }
    }

    private static double phase(String name, double at) {
        Constituent constituent = Constituents.named(name).orElseThrow();
        return constituent.argumentDegrees(MeanLongitudes.at(at))
                + NodeFactors.at(at).phaseDegrees(constituent);
    }
}
