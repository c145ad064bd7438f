package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Ways out worked by hand: in EV 13 f/22 and ISO 100 give 512/8192 = 1/16 s, f/2.8 and ISO 6400 1/65536 s. */
class WaysOutTest {

    private static SettingsAnswer solve(
            double exposureValue, double bias, double from, double to, Camera camera, double rate, String... bag) {
        return SettingsSolver.solve(new SettingsRequest(
                Asked.meter(exposureValue),
                bias,
                from,
                to,
                Asked.filters(bag),
                2,
                camera,
                new ChangingLight(rate),
                Reciprocity.none(),
                Optional.empty()));
    }

    private static WayOut way(SettingsAnswer answer, WayOut.Kind kind) {
        return answer.ways().stream().filter(w -> w.kind() == kind).findFirst().orElseThrow();
    }

    /** 16 s are eight stops over 1/16 s: a filter of 8 stops, EV 5, or 256 frames. */
    @Test
    void tooBright() {
        SettingsAnswer answer = solve(13, 0, 16, 16, Camera.standard(), 0);
        assertThat(answer.choices()).isEmpty();
        assertThat(answer.ways())
                .extracting(WayOut::kind)
                .containsExactly(WayOut.Kind.FILTER, WayOut.Kind.WAIT, WayOut.Kind.BURST);
        assertThat(answer.ways()).allSatisfy(w -> assertThat(w.stops()).isCloseTo(8, within(1e-9)));
        assertThat(way(answer, WayOut.Kind.FILTER).words()).contains("8 stops", "1/15 at f/22 ISO 100");
        assertThat(way(answer, WayOut.Kind.WAIT).words())
                .contains("fallen by 8 stops", "to EV100 5")
                .doesNotContain("min");
        assertThat(way(answer, WayOut.Kind.BURST).words())
                .contains("256 frames of 1/15")
                .doesNotContain("more than");
    }

    /** At a fifth of a stop a minute eight stops are 40 minutes; brightening light never gets there. */
    @Test
    void waitingHasAnHour() {
        WayOut wait = way(solve(13, 0, 16, 16, Camera.standard(), 0.2), WayOut.Kind.WAIT);
        assertThat(wait.words()).contains("in about 40 min");
        assertThat(way(solve(13, 0, 16, 16, Camera.standard(), -0.2), WayOut.Kind.WAIT)
                        .words())
                .doesNotContain("min");
    }

    /** A picture a stop brighter than metered has a stop less to wait: EV 13 falls to 6, not to 5. */
    @Test
    void theBiasIsKeptWithTheReading() {
        SettingsAnswer answer = solve(13, 1, 16, 16, Camera.standard(), 0);
        assertThat(way(answer, WayOut.Kind.WAIT).stops()).isCloseTo(7, within(1e-9));
        assertThat(way(answer, WayOut.Kind.WAIT).words()).contains("to EV100 6");
    }

    /** The densest stack counts: six and three stops leave no more than 1/16 s · 512 = 32 s. */
    @Test
    void theDensestStackCounts() {
        SettingsAnswer answer = solve(13, 0, 128, 128, Camera.standard(), 0, "3", "6");
        assertThat(way(answer, WayOut.Kind.FILTER).stops()).isCloseTo(2, within(1e-9));
        assertThat(way(answer, WayOut.Kind.BURST).words()).contains("4 frames of 32 s");
    }

    /** 128 s of 1/16 s would be 2048 frames. */
    @Test
    void aBurstOfThousandsIsNamedAsSuch() {
        assertThat(way(solve(13, 0, 128, 128, Camera.standard(), 0), WayOut.Kind.BURST)
                        .words())
                .contains("999 frames", "more than a camera should be asked for");
    }

    /** In EV −6 f/2.8 and ISO 6400 need 2³ · 2⁶ / 2⁶ = 8 s: three stops from 1 s, eight frames, or EV −3. */
    @Test
    void tooDark() {
        SettingsAnswer answer = solve(-6, 0, 1, 1, Camera.standard(), 0);
        assertThat(answer.ways())
                .extracting(WayOut::kind)
                .containsExactly(WayOut.Kind.TIME, WayOut.Kind.WAIT, WayOut.Kind.BURST);
        assertThat(way(answer, WayOut.Kind.TIME).stops()).isCloseTo(3, within(1e-9));
        assertThat(way(answer, WayOut.Kind.TIME).words())
                .contains("take 8 s", "f/2.8 and ISO 6400", "3 stops too dark");
        assertThat(way(answer, WayOut.Kind.WAIT).stops()).isCloseTo(-3, within(1e-9));
        assertThat(way(answer, WayOut.Kind.WAIT).words()).contains("3 stops brighter", "at EV100 -3");
        assertThat(way(answer, WayOut.Kind.BURST).stops()).isCloseTo(3, within(1e-9));
        assertThat(way(answer, WayOut.Kind.BURST).words()).contains("8 frames of 1 s");
        // a stop darker than metered has a stop less to go
        SettingsAnswer dim = solve(-6, -1, 1, 1, Camera.standard(), 0);
        assertThat(way(dim, WayOut.Kind.TIME).stops()).isCloseTo(2, within(1e-9));
        assertThat(way(dim, WayOut.Kind.WAIT).words()).contains("at EV100 -4");
    }

    /** A fixed aperture and ISO: 8 s and, with ten stops, 8192 s are all there is; 60 s lie between. */
    @Test
    void betweenWhatTheBagGives() {
        Camera fixed = Asked.camera(8, 8, 100, 100, 100);
        SettingsAnswer answer = solve(3, 0, 60, 60, fixed, 0, "10");
        assertThat(answer.choices()).isEmpty();
        assertThat(answer.ways()).extracting(WayOut::kind).containsExactly(WayOut.Kind.TIME, WayOut.Kind.BURST);
        assertThat(answer.ways().get(0).words()).contains("ask for a range");
        assertThat(answer.ways().get(1).words()).contains("2 frames of 30 s");
    }

    /** At two stops a minute no more than 60/(2 ln 2) = 43 s of the light now are ever gathered: 120 s are 1.47 stops off. */
    @Test
    void lightThatFadesTooFast() {
        SettingsAnswer answer = solve(3, 0, 120, 120, Camera.standard(), 2, "10");
        assertThat(answer.choices()).isEmpty();
        WayOut first = answer.ways().get(0);
        assertThat(first.kind()).isEqualTo(WayOut.Kind.TIME);
        assertThat(first.words()).contains("fades faster than it gathers", "no more than 43 s");
        assertThat(first.stops()).isCloseTo(Math.log(120 / (30 / Math.log(2))) / Math.log(2), within(1e-9));
        assertThat(solve(3, 0, 40, 40, Asked.camera(8, 8, 100, 100, 100), 2, "10")
                        .ways())
                .extracting(WayOut::words)
                .noneSatisfy(words -> assertThat(words).contains("fades faster"));
    }

    @Test
    void everyKindHasItsWord() {
        assertThat(List.of(WayOut.Kind.values()))
                .extracting(WayOut.Kind::word)
                .containsExactly("filter", "wait", "burst", "time");
    }
}
