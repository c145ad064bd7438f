package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Epoch;
import ebblight.core.sky.Place;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Springs follow full and new moon by the age of the tide, (g S₂ − g M₂) / 1.016° an hour (common knowledge, from
 * memory). The mean moon of the formula and the true one differ by up to 15 hours.
 */
class SpringsAndNeapsReferenceTest {

    /** Syzygies of January and February 2026: astronomy-engine and PyEphem agree within 45 s. */
    private static final List<String> SYZYGIES =
            List.of("2026-01-03T10:03:00Z", "2026-01-18T19:52:00Z", "2026-02-01T22:09:00Z", "2026-02-17T12:01:00Z");

    private static Station station(double moonPhase, double sunPhase, double diurnal) {
        return new Station(
                "x",
                "x",
                "",
                Place.of(42, -71),
                "MSL",
                0,
                List.of(
                        new Station.Harmonic("M2", 1.371, moonPhase),
                        new Station.Harmonic("S2", 0.208, sunPhase),
                        new Station.Harmonic("K1", diurnal, 0)),
                "",
                "");
    }

    @Test
    void springsComeAtTheAgeOfTheTideAfterTheSyzygies() {
        // Boston, NOAA: g M2 109.2°, g S2 146.2°
        double age = (146.2 - 109.2) / 1.016 * 3600;
        double from = Epoch.seconds(Instant.parse("2026-01-03T00:00:00Z"));
        List<SpringsAndNeaps.Turn> turns =
                SpringsAndNeaps.between(station(109.2, 146.2, 0.1), from, from + 50 * 86_400);
        List<Double> springs = turns.stream()
                .filter(SpringsAndNeaps.Turn::springs)
                .map(t -> Epoch.seconds(t.time()))
                .toList();
        assertThat(springs).hasSize(SYZYGIES.size());
        for (int i = 0; i < springs.size(); i++) {
            double expected = Epoch.seconds(Instant.parse(SYZYGIES.get(i))) + age;
            assertThat(Math.abs(springs.get(i) - expected) / 3600)
                    .as(SYZYGIES.get(i))
                    .isLessThan(15);
        }
        // neaps lie between: in turn with the springs
        for (int i = 1; i < turns.size(); i++) {
            assertThat(turns.get(i).springs()).isNotEqualTo(turns.get(i - 1).springs());
        }
    }

    @Test
    void aPlaceOfOneTideADayHasNone() {
        double from = Epoch.seconds(Instant.parse("2026-01-03T00:00:00Z"));
        assertThat(SpringsAndNeaps.between(station(109.2, 146.2, 5), from, from + 50 * 86_400))
                .isEmpty();
    }
}
