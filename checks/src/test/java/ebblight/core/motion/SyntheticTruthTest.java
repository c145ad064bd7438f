package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import ebblight.demo.Weather;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Figures against scenes of known truth: the demo's seas, clouds and coast. Truth is what the scene is made of or the
 * long mean of it, never an estimate by the code under test.
 */
class SyntheticTruthTest {

    private static final Work WORK = new AllCores();

    /** Minutes of each sea. Four tell the truth itself to about 5 %; docs/accuracy.md is measured on twelve. */
    private static final int MINUTES = 4;

    private static final double HALF_A_STOP = 0.5;

    /** Seconds of the clips that each sea is judged by. */
    private static final Map<String, List<Integer>> SEAS = Map.of(
            "breeze-1.5", List.of(2, 10),
            "wind-3", List.of(2, 10),
            "wind-8", List.of(2, 10),
            "wind-5-swell-10", List.of(2, 10),
            "swell-8", List.of(10),
            "gusts-3", List.of(5, 10),
            "wind-3-swell-8", List.of(10, 20),
            "slanting", List.of(10),
            "slow-gusts", List.of(5, 10));

    /** A swell of 7 s whose crests run slantwise over the picture. Nothing was chosen on these waves. */
    private static final Weather SLANTING = new Weather("slanting", 3, 1e4, -115, 0.5, 7, -20, 0, 71);

    /** Light air whose gusts take half a minute to pass. Nothing was chosen on these waves. */
    private static final Weather SLOW_GUSTS = new Weather("slow-gusts", 2, 5e3, -60, 0, 8, 0, 0.2, 82);

    /** A sea takes many seconds to make: each is made once. */
    private static final Map<String, Map<Integer, SeaTrial>> TRIALS = new HashMap<>();

    private static final Map<String, ViewTrial> VIEWS = new HashMap<>();

    private static SeaTrial sea(String name, int clipSeconds) {
        Map<Integer, SeaTrial> trials = TRIALS.computeIfAbsent(name, sea -> {
            SeaRuns runs = SeaRuns.of(weather(sea), MINUTES, 10, WORK);
            Map<Integer, SeaTrial> all = new HashMap<>();
            SEAS.getOrDefault(sea, List.of()).forEach(seconds -> all.put(seconds, SeaTrial.of(runs, seconds, 100)));
            return all;
        });
        return Objects.requireNonNull(trials.get(clipSeconds), "not in SEAS");
    }

    private static ViewTrial view(String weather, double iso) {
        return VIEWS.computeIfAbsent(weather + " " + iso, key -> ViewTrial.of(weather(weather), 480, iso, WORK));
    }

    static Weather weather(String name) {
        return Stream.concat(Weather.ALL.stream(), Stream.of(SLANTING, SLOW_GUSTS))
                .filter(w -> w.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"breeze-1.5", "wind-3", "wind-8", "wind-5-swell-10"})
    void tenSecondsTellAMinute(String sea) {
        SeaTrial ten = sea(sea, 10);
        for (int t = 0; t < SeaTrial.SECONDS.length; t++) {
            assertThat(ten.p90Stops()[t])
                    .as("stops at %s s", SeaTrial.SECONDS[t])
                    .isLessThanOrEqualTo(HALF_A_STOP);
        }
        assertThat(ten.coveredInAll()).isGreaterThanOrEqualTo(0.9);
        SeaTrial two = sea(sea, 2);
        for (int t = 2; t < SeaTrial.SECONDS.length; t++) {
            assertThat(two.tooFar()[t])
                    .as("refused at %s s", SeaTrial.SECONDS[t])
                    .isCloseTo(1, within(1e-9));
        }
        assertThat(two.coveredInAll()).isGreaterThanOrEqualTo(0.9);
    }

    @ParameterizedTest
    @CsvSource({
        "swell-8, 0.1, 0.85",
        "gusts-3, 0.1, 0.85",
        "wind-3-swell-8, 0.1, 0.85",
        "slanting, 0.15, 0.85",
        "slow-gusts, 0.1, 0.8"
    })
    void swellAndGustsAreCalledUnresolved(String sea, double most, double held) {
        SeaTrial ten = sea(sea, 10);
        assertThat(ten.resolved()).isLessThanOrEqualTo(most);
        assertThat(ten.coveredInAll()).isGreaterThanOrEqualTo(held);
    }

    /** Twenty seconds hold two and a half waves of 8 s; three are asked for. */
    @Test
    void twoWavesOfASwellAreNotEnough() {
        SeaTrial twenty = sea("wind-3-swell-8", 20);
        assertThat(twenty.resolved()).isLessThanOrEqualTo(0.2);
    }

    /** Five seconds may lie between two gusts: they say so, and the range of short clips allows for one. */
    @ParameterizedTest
    @CsvSource({"gusts-3, 0.9", "slow-gusts, 0.8"})
    void shortClipsAllowForAGust(String sea, double heldByTenSeconds) {
        assertThat(sea(sea, 5).resolved()).isLessThanOrEqualTo(0.1);
        assertThat(sea(sea, 5).coveredInAll()).isGreaterThanOrEqualTo(0.9);
        assertThat(sea(sea, 10).coveredInAll()).isGreaterThanOrEqualTo(heldByTenSeconds);
    }

    /** Light winds, in which ten seconds do suffice, are not called unresolved. */
    @ParameterizedTest
    @ValueSource(strings = {"breeze-1.5", "wind-3"})
    void ripplesAreCalledResolved(String sea) {
        SeaTrial ten = sea(sea, 10);
        assertThat(ten.resolved()).isGreaterThanOrEqualTo(0.9);
    }

    @ParameterizedTest
    @CsvSource({"1, 100, 0.04", "1, 800, 0.04", "5, 100, 0.02", "10, 800, 0.02"})
    void cloudsDriftAsTold(double pixelsPerSecond, double iso, double limit) {
        CloudTrial clouds = CloudTrial.of(pixelsPerSecond, 10, iso, 0, 16, WORK);
        assertThat(clouds.told()).isEqualTo(1);
        assertThat(clouds.p90()).isLessThanOrEqualTo(limit);
        assertThat(clouds.covered()).as("held by the stated error").isGreaterThanOrEqualTo(0.85);
        assertThat(clouds.medianStated()).as("not so wide that it says nothing").isLessThan(limit / 2);
    }

    /** Clouds that go slower near the horizon, under a glow that stands: the mean over the sky. */
    @ParameterizedTest
    @CsvSource({"evening, 100", "gusts-3, 100", "wind-3, 800"})
    void cloudsInPerspectiveDriftAsStated(String sea, double iso) {
        ViewTrial view = view(sea, iso);
        assertThat(view.drift()).isLessThanOrEqualTo(0.04).isLessThanOrEqualTo(view.driftStated());
        assertThat(view.driftStated()).as("not so wide that it says nothing").isLessThan(0.08);
    }

    /** In each of eight classes of luminance; chop and grass leave few blocks calm. */
    @ParameterizedTest
    @CsvSource({"wind-3, 100", "wind-3, 800", "breeze-1.5, 100", "wind-8, 100", "wind-8, 800", "evening, 800"})
    void noiseIsToldWithinATenth(String sea, double iso) {
        double[] ratios = view(sea, iso).noise();
        assertThat(ratios).isNotEmpty();
        for (double ratio : ratios) {
            assertThat(ratio).isCloseTo(1, within(0.10));
        }
    }

    /** All but the grass, which takes a line drawn by hand. */
    @Test
    void coresOfRegionsAreTold() {
        ViewTrial view = view("wind-3", 100);
        assertThat(view.rightButSwaying()).isGreaterThanOrEqualTo(0.94);
        assertThat(view.still()).isTrue();
    }
}
