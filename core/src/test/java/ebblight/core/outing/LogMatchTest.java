package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.outing.LogMatch.Matched;
import ebblight.core.outing.LogMatch.Pair;
import ebblight.core.outing.LogMatch.Taken;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Common practice: a camera's clock is off by a constant, often by whole hours of a zone that was not set. */
class LogMatchTest {

    private static final List<Taken> LOG = List.of(new Taken(1000, 30), new Taken(1100, 60), new Taken(1300, 30));

    @Test
    void findsAnHourAndSomeSeconds() {
        // the camera is 3600 s ahead and 12 s fast; its times are whole seconds; two frames belong to nobody
        List<Taken> frames = List.of(
                new Taken(4500, 0.01),
                new Taken(4612, 32),
                new Taken(4713, 60),
                new Taken(4912, 30),
                new Taken(5000, 2));
        Matched matched = LogMatch.of(LOG, frames).orElseThrow();
        assertThat(matched.clockSeconds()).isCloseTo(3612, within(1.0));
        assertThat(matched.pairs()).extracting(Pair::entry).containsExactly(0, 1, 2);
        assertThat(matched.pairs()).extracting(Pair::frame).containsExactly(1, 2, 3);
        assertThat(matched.ambiguous()).isFalse();
    }

    @Test
    void saysWhenAnotherClockWouldDoAsWell() {
        List<Taken> one = List.of(new Taken(1000, 30));
        List<Taken> frames = List.of(new Taken(1005, 30), new Taken(2000, 30));
        assertThat(LogMatch.of(one, frames).orElseThrow().ambiguous()).isTrue();
    }

    @Test
    void neverPairsExposuresThatDiffer() {
        assertThat(LogMatch.of(List.of(new Taken(1000, 30)), List.of(new Taken(1000, 2))))
                .isEqualTo(Optional.empty());
    }

    @Test
    void aFrameBelongsToOneEntry() {
        List<Taken> log = List.of(new Taken(1000, 4), new Taken(1002, 4));
        assertThat(LogMatch.of(log, List.of(new Taken(1001, 4))).orElseThrow().pairs())
                .hasSize(1);
    }

    /** Two clocks bring both entries together; one of them to the second. The frames come in no order. */
    @Test
    void ofTwoClocksTheOneThatFitsBetterIsTaken() {
        List<Taken> log = List.of(new Taken(0, 30), new Taken(100, 30));
        List<Taken> frames =
                List.of(new Taken(5100, 30), new Taken(1103, 30), new Taken(5000, 30), new Taken(1000, 30));
        Matched matched = LogMatch.of(log, frames).orElseThrow();
        assertThat(matched.clockSeconds()).isEqualTo(5000);
        assertThat(matched.pairs()).containsExactly(new Pair(0, 2, 0), new Pair(1, 0, 0));
        assertThat(matched.ambiguous()).isTrue();
        // of two that fit alike, the clock that is less wrong
        Matched near = LogMatch.of(
                        log, List.of(new Taken(900, 30), new Taken(1000, 30), new Taken(-200, 30), new Taken(-300, 30)))
                .orElseThrow();
        assertThat(near.clockSeconds()).isEqualTo(-300);
    }

    /** A time that was not logged, or that the file does not tell, is no reason against a pair. */
    @Test
    void unknownTimesMayBelong() {
        assertThat(LogMatch.of(List.of(new Taken(0, 0)), List.of(new Taken(7, 30))))
                .isPresent();
        assertThat(LogMatch.of(List.of(new Taken(0, 30)), List.of(new Taken(7, 0))))
                .isPresent();
    }
}
