package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.exposure.Camera;
import ebblight.core.exposure.Filter;
import ebblight.core.outing.LogMatch.Pair;
import ebblight.core.outing.LogMatch.Taken;
import ebblight.core.sky.CameraView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Packing, matching and guessing at their edges; f/8 in EV 13 is 1/128 s at ISO 100 (ISO 2720). */
class PackingAndLogTest {

    private static final Instant START = Instant.parse("2027-01-10T16:00:00Z");

    private static PackingList.Light light(int minute, double exposureValue, boolean opens) {
        return new PackingList.Light(START.plusSeconds(60L * minute), exposureValue, opens);
    }

    private static PackingList pack(String filters, double from, double to, PackingList.Light... lights) {
        List<Filter> bag = filters.isEmpty()
                ? List.of()
                : Stream.of(filters.split(",", -1)).map(Filter::parse).toList();
        return PackingList.of(bag, Camera.standard(), 2, from, to, List.of(lights));
    }

    private static List<String> stack(PackingList.Use use) {
        return use.stack().stream().map(Filter::name).toList();
    }

    /** 8 s: ten stops at f/8 from EV 14 (f/11) to EV 12 (f/5.6), six from EV 10 to EV 8. */
    @Test
    void aStackStaysOnAsLongAsItServes() {
        PackingList list = pack(
                "6,10",
                8,
                8,
                light(0, 14, true),
                light(10, 13, false),
                light(20, 12, false),
                light(30, 10, false),
                light(40, 8, false));
        assertThat(list.uses()).hasSize(2);
        assertThat(stack(list.uses().get(0))).containsExactly("10");
        assertThat(list.uses().get(0).from()).isEqualTo(START);
        assertThat(list.uses().get(0).to()).isEqualTo(START.plusSeconds(1200));
        assertThat(stack(list.uses().get(1))).containsExactly("6");
        assertThat(list.uses().get(1).from()).isEqualTo(START.plusSeconds(1800));
        assertThat(list.uses().get(1).to()).isEqualTo(START.plusSeconds(2400));
        assertThat(list.reached()).isEqualTo(5);
        assertThat(list.of()).isEqualTo(5);
    }

    /** A second window begins anew, with the same filter. */
    @Test
    void everyWindowHasItsOwnUse() {
        PackingList list = pack("10", 8, 8, light(0, 13, true), light(10, 13, false), light(600, 13, true));
        assertThat(list.uses()).hasSize(2);
        assertThat(list.uses().get(0).to()).isEqualTo(START.plusSeconds(600));
        assertThat(list.uses().get(1).from()).isEqualTo(START.plusSeconds(36_000));
    }

    /** In EV 13 the 10 serves and in EV −6 nothing does: between them there is no use. */
    @Test
    void whatIsNotReachedHasNoUse() {
        PackingList list = pack("10", 8, 8, light(0, 13, true), light(10, -6, false), light(20, 13, false));
        assertThat(list.reached()).isEqualTo(2);
        assertThat(list.uses()).hasSize(2);
        // f/5.6 in EV −6 is 32 · 64 = 2048 s, eight stops from 8 s
        assertThat(list.missing().orElseThrow().stops()).isCloseTo(-8, within(0.01));
        assertThat(list.missing().orElseThrow().time()).isEqualTo(START.plusSeconds(600));
    }

    /** Of what misses, the worst is told: EV 15 lacks more than EV 14 does. */
    @Test
    void theFarthestMissIsTold() {
        PackingList list = pack("3", 64, 64, light(0, 14, true), light(10, 15, false), light(20, 14.5, false));
        // f/11 in EV 15 is 1/256 s: fourteen stops from 64 s, three are there
        assertThat(list.missing().orElseThrow().stops()).isCloseTo(11, within(0.01));
        assertThat(list.missing().orElseThrow().time()).isEqualTo(START.plusSeconds(600));
    }

    /** 8 s in EV 15 behind ten stops need f/16; the lens goes there, past its sharpest, and that is said. */
    @Test
    void apertureAndIsoAreStretchedBeforeATimeIsGivenUp() {
        PackingList narrow = pack("10", 8, 8, light(0, 15, true));
        assertThat(narrow.reached()).isEqualTo(1);
        assertThat(narrow.compromise()).isTrue();
        assertThat(narrow.missing()).isEmpty();
        // EV 1 at f/2.8 and ISO 400 (two stops) is 1 s; at EV 0 it is out of reach
        assertThat(pack("", 1, 1, light(0, 1, true)).reached()).isEqualTo(1);
        assertThat(pack("", 1, 1, light(0, 0.9, true)).reached()).isZero();
        // some reached by stretching, some not: what to buy is told for the sharpest apertures
        PackingList some = pack("10", 8, 8, light(0, 15, true), light(10, 20, false));
        assertThat(some.compromise()).isTrue();
        assertThat(some.missing().orElseThrow().stops()).isCloseTo(6, within(0.01));
    }

    /** A range of times is reached anywhere in it: 1 to 8 s without a filter from EV 5 (f/5.6, 1 s) down. */
    @Test
    void anyTimeOfTheRangeIsEnough() {
        assertThat(pack("", 1, 8, light(0, 7, true)).reached()).isEqualTo(1);
        assertThat(pack("", 1, 8, light(0, 7, true)).compromise()).isFalse();
        assertThat(pack("", 1, 8, light(0, 7.1, true)).compromise()).isTrue();
        assertThat(pack("", 1, 8, light(0, 2, true)).compromise()).isFalse();
        assertThat(pack("", 1, 8, light(0, 1.9, true)).compromise()).isTrue();
    }

    /** Two filters that both serve: the one that takes less. A variable one counts, a polariser does not. */
    @Test
    void theLighterOfTwoThatServeIsPacked() {
        assertThat(pack("10,9", 8, 8, light(0, 13, true)).filters())
                .extracting(Filter::name)
                .containsExactly("9");
        assertThat(pack("vnd10", 8, 8, light(0, 13, true)).filters()).hasSize(1);
        assertThat(pack("pol", 8, 8, light(0, 13, true)).filters()).isEmpty();
    }

    @Test
    void thereIsALimitToABag() {
        List<Filter> sixteen =
                IntStream.range(0, 16).mapToObj(k -> Filter.parse("1")).toList();
        assertThatCode(() -> PackingList.of(sixteen, Camera.standard(), 1, 1, 1, List.of()))
                .doesNotThrowAnyException();
        List<Filter> more = new ArrayList<>(sixteen);
        more.add(Filter.parse("1"));
        assertThatThrownBy(() -> PackingList.of(more, Camera.standard(), 1, 1, 1, List.of()))
                .hasMessageContaining("17 were given");
        assertThatThrownBy(() -> PackingList.of(List.of(), Camera.standard(), 5, 1, 1, List.of()))
                .hasMessageContaining("one to four");
        assertThatCode(() -> PackingList.of(List.of(), Camera.standard(), 4, 1, 1, List.of()))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> PackingList.of(List.of(), Camera.standard(), 1, 0, 1, List.of()))
                .hasMessageContaining("shorter to a longer");
    }

    /** Four seconds apart is one picture, more is not; of two the nearer is taken, whichever comes first on the card. */
    @Test
    void aFrameAndAnEntryLieWithinSeconds() {
        List<Taken> log = List.of(new Taken(1000, 4), new Taken(1100, 4));
        // the second frame fixes the clock, the first may be off by four seconds
        assertThat(LogMatch.of(log, List.of(new Taken(1004, 4), new Taken(1100, 4)))
                        .orElseThrow()
                        .pairs())
                .hasSize(2);
        assertThat(LogMatch.of(log, List.of(new Taken(1004.5, 4), new Taken(1100, 4)))
                        .orElseThrow()
                        .pairs())
                .hasSize(1);
        LogMatch.Matched nearer = LogMatch.of(log, List.of(new Taken(1100, 4), new Taken(998, 4), new Taken(1001, 4)))
                .orElseThrow();
        assertThat(nearer.pairs()).extracting(Pair::frame).containsExactly(2, 0);
        assertThat(nearer.pairs().get(0).apartSeconds()).isCloseTo(1, within(1e-9));
        assertThat(nearer.clockSeconds()).isCloseTo(0.5, within(1e-9));
    }

    /** Dial and stopwatch differ by up to a third of a stop or so: 30 s logged, 32 s or 25 s in the file; never 15 s. */
    @ParameterizedTest
    @CsvSource({"32, true", "25, true", "20.5, true", "15, false", "44, true", "50, false", "0, true"})
    void exposuresMustBeAlike(double openSeconds, boolean alike) {
        assertThat(LogMatch.of(List.of(new Taken(1000, 30)), List.of(new Taken(1000, openSeconds)))
                        .isPresent())
                .isEqualTo(alike);
        assertThat(LogMatch.of(List.of(new Taken(1000, openSeconds)), List.of(new Taken(1000, 30)))
                        .isPresent())
                .isEqualTo(alike);
    }

    /** Of two clocks that bring as many together, the one that lies nearer to the log's; eight seconds are no other clock. */
    @Test
    void theLikelierClockIsTaken() {
        List<Taken> log = List.of(new Taken(1000, 30));
        LogMatch.Matched two = LogMatch.of(log, List.of(new Taken(8200, 30), new Taken(1003, 30)))
                .orElseThrow();
        assertThat(two.clockSeconds()).isEqualTo(3);
        assertThat(two.ambiguous()).isTrue();
        assertThat(LogMatch.of(log, List.of(new Taken(1001, 30), new Taken(1008, 30)))
                        .orElseThrow()
                        .ambiguous())
                .isFalse();
        assertThat(LogMatch.of(List.of(), List.of(new Taken(1, 1)))).isEmpty();
        assertThat(LogMatch.of(log, List.of())).isEmpty();
        // pairs that lie closer win over an offset that is nearer to nought
        List<Taken> three = List.of(new Taken(0, 0), new Taken(100, 0), new Taken(200, 0));
        LogMatch.Matched exact = LogMatch.of(three, List.of(new Taken(50, 0), new Taken(150, 0), new Taken(250, 0)))
                .orElseThrow();
        assertThat(exact.clockSeconds()).isEqualTo(50);
        assertThat(exact.pairs()).hasSize(3);
    }

    /** √T: half the texture takes four times as long, so softened (15 %) comes at a ninth of silky's time. */
    @Test
    void waterIsGuessedByItsPeriod() {
        List<FirstGuess.Limit> limits = FirstGuess.water(10);
        assertThat(limits).extracting(FirstGuess.Limit::word).containsExactly("softened", "silky", "mist", "glass");
        double silky = limits.get(1).seconds();
        assertThat(limits.get(0).seconds()).isCloseTo(silky / 9, within(1e-9));
        assertThat(limits.get(2).seconds()).isCloseTo(silky * 6.25, within(1e-9));
        assertThat(limits.get(3).seconds()).isCloseTo(silky * 25, within(1e-9));
        for (FirstGuess.Limit limit : limits) {
            assertThat(limit.until()).isFalse();
            // a guess says so: at least the 1.7 by which two seas differed
            assertThat(limit.high() / limit.seconds()).isGreaterThan(1.7);
            assertThat(limit.seconds() / limit.low()).isGreaterThan(1.7);
        }
        assertThat(FirstGuess.water(20).get(1).seconds()).isCloseTo(2 * silky, within(1e-9));
        assertThatCode(() -> FirstGuess.water(30)).doesNotThrowAnyException();
        assertThatThrownBy(() -> FirstGuess.water(30.1)).hasMessageContaining("30 s");
    }

    /** The limits as the messages state them; étages of the Cloud Atlas: low to 2 km, middle 2 to 7, high 5 to 13. */
    @Test
    void cloudAndWindLieWithinWhatCanBe() {
        assertThatCode(() -> new CloudLayer(50, 0)).doesNotThrowAnyException();
        assertThatCode(() -> new CloudLayer(20_000, 100)).doesNotThrowAnyException();
        assertThatThrownBy(() -> new CloudLayer(20_001, 10)).hasMessageContaining("50 to 20000");
        assertThatThrownBy(() -> new CloudLayer(1000, 101)).hasMessageContaining("0 to 100");
        assertThatThrownBy(() -> new CloudLayer(1000, -1)).hasMessageContaining("0 to 100");
        assertThatCode(() -> new WindSea(0.5)).doesNotThrowAnyException();
        assertThatCode(() -> new WindSea(40)).doesNotThrowAnyException();
        assertThatThrownBy(() -> new WindSea(41)).hasMessageContaining("0.5 to 40");
        assertThat(CloudLayer.Usual.of("low").baseMetres()).isLessThan(2000);
        assertThat(CloudLayer.Usual.of("middle").baseMetres()).isBetween(2000.0, 7000.0);
        assertThat(CloudLayer.Usual.of("high").baseMetres()).isBetween(5000.0, 13_000.0);
        // a view that looks down still has its sky at 5° or more
        assertThat(CloudLayer.elevationDegrees(new CameraView(0, -30, 24, 36, 24)))
                .isEqualTo(5);
        List<FirstGuess.Limit> cloud = FirstGuess.cloud(new CloudLayer(1000, 10), new CameraView(270, 0, 24, 36, 24));
        assertThat(cloud.get(0).until()).isTrue();
        assertThat(cloud.get(1).until()).isFalse();
        // between across and along, in the middle by stops: low · √(1/sin 14.036°)
        assertThat(cloud.get(0).seconds()).isCloseTo(cloud.get(0).low() / Math.sqrt(0.24254), within(1e-3));
    }
}
