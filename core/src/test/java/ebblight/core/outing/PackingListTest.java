package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.exposure.Camera;
import ebblight.core.exposure.Filter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The arithmetic is that of exposure values (ISO 2720): EV100 13 is f/8 and 1/128 s at ISO 100, each stop of filter
 * doubles the time, each stop of light halves it. The standard camera is sharpest from f/5.6 to f/11.
 */
class PackingListTest {

    private static final Instant START = Instant.parse("2027-01-10T16:00:00Z");

    private static PackingList pack(String filters, double seconds, double... exposureValues) {
        List<PackingList.Light> lights = new ArrayList<>();
        for (double value : exposureValues) {
            lights.add(new PackingList.Light(START.plusSeconds(600L * lights.size()), value, lights.isEmpty()));
        }
        List<Filter> bag = filters.isEmpty()
                ? List.of()
                : Stream.of(filters.split(",", -1)).map(Filter::parse).toList();
        return PackingList.of(bag, Camera.standard(), 2, seconds, seconds, lights);
    }

    private static List<String> names(PackingList list) {
        return list.filters().stream().map(Filter::name).toList();
    }

    @Test
    void oneFilterThatReachesIsEnough() {
        // 8 s at f/8 in EV 13 is ten stops over 1/128 s
        PackingList list = pack("3,6,10", 8, 13);
        assertThat(names(list)).containsExactly("10");
        assertThat(list.reached()).isEqualTo(1);
        assertThat(list.compromise()).isFalse();
        assertThat(list.missing()).isEmpty();
    }

    @Test
    void twoAreStackedWhenNoneAloneReaches() {
        // 64 s at f/8 in EV 13: thirteen stops, and f/11 gives one of them back at most
        assertThat(names(pack("3,6,10", 64, 13))).containsExactly("3", "10");
    }

    @Test
    void theFewestServeTheWholeWindow() {
        // EV 13 falling to EV 5: 8 s wants ten stops at first and two at last, at f/8
        PackingList list = pack("3,6,10", 8, 13, 11, 9, 7, 5);
        assertThat(list.reached()).isEqualTo(5);
        // at f/11 nine stops are enough at first, so two filters serve, and none alone serves both ends
        assertThat(names(list)).containsExactly("3", "6");
        assertThat(list.uses().get(0).stack()).hasSize(2);
        assertThat(list.uses().get(list.uses().size() - 1).to()).isEqualTo(START.plusSeconds(4 * 600));
    }

    @Test
    void inTheDarkNoFilterIsPacked() {
        // EV −2 at f/8: 256 s without any
        PackingList list = pack("6,10", 256, -2);
        assertThat(list.filters()).isEmpty();
        assertThat(list.uses()).hasSize(1);
    }

    @Test
    void whatIsMissingIsSaidInStops() {
        // 256 s in EV 15: f/11 gives 1/256 s, that is 16 stops more; six are in the bag
        PackingList list = pack("6", 256, 15);
        assertThat(list.reached()).isZero();
        assertThat(list.missing().orElseThrow().stops()).isCloseTo(10, within(0.01));
    }

    @Test
    void lightThatIsTooDimIsSaidToo() {
        // EV −6 at f/5.6 is 2^5 · 2^6 = 2048 s, eleven stops from 1 s
        PackingList list = pack("6", 1, -6);
        assertThat(list.missing().orElseThrow().stops()).isCloseTo(-11, within(0.01));
    }

    @Test
    void polarisersAndGraduatedFiltersAreNotCounted() {
        assertThat(names(pack("pol,grad2,10", 8, 13))).containsExactly("10");
    }

    @Test
    void badRequestsAreRefused() {
        assertThatThrownBy(() -> PackingList.of(List.of(), Camera.standard(), 0, 1, 1, List.of()))
                .hasMessageContaining("one to four");
        assertThatThrownBy(() -> PackingList.of(List.of(), Camera.standard(), 2, 2, 1, List.of()))
                .hasMessageContaining("shorter to a longer");
    }
}
