package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Common practice: leave the sky about half a stop brighter; up to a stop needs nothing. */
class BalanceWayTest {

    private static List<BalanceWay> ways(double stops, double softness, Double... owned) {
        return BalanceWay.waysOut(new Balance(stops, 0.5, 0.5, 0, softness, 1), List.of(owned));
    }

    @Test
    void theFilterThatLeavesTheMostNaturalSkyComesFirst() {
        List<BalanceWay> ways = ways(2.6, 0.2);
        // 1, 2 and 3 stops leave 1.6, 0.6 and −0.4; the last a tenth from a natural half, as the second
        assertThat(ways)
                .extracting(BalanceWay::kind)
                .containsExactly(
                        BalanceWay.Kind.GRADUATED,
                        BalanceWay.Kind.GRADUATED,
                        BalanceWay.Kind.GRADUATED,
                        BalanceWay.Kind.TWO_EXPOSURES);
        assertThat(ways.get(2).stops()).isEqualTo(1);
        assertThat(ways.get(2).leftStops()).isCloseTo(1.6, within(1e-12));
        assertThat(ways.get(2).words()).isEqualTo("graduated filter of 1 stop, soft edge: leaves 1.6 stops");
        assertThat(ways.get(3).stops()).isEqualTo(2.6);
        assertThat(ways.get(3).leftStops()).isZero();
        assertThat(ways.get(3).words()).contains("2.6 stops apart");
        BalanceWay two = ways(2.5, 0.2).get(0);
        assertThat(two.stops()).isEqualTo(2);
        assertThat(two.words()).isEqualTo("graduated filter of 2 stops, soft edge: leaves 0.5 stops");
    }

    /** A filter that darkens the sky by half a stop or more below the foreground is out. */
    @Test
    void noFilterTurnsTheLightAround() {
        assertThat(ways(2.4, 0.2))
                .filteredOn(w -> w.kind() == BalanceWay.Kind.GRADUATED)
                .extracting(BalanceWay::stops)
                .containsExactlyInAnyOrder(1.0, 2.0);
        assertThat(ways(2.6, 0.2, 3.2)).extracting(BalanceWay::kind).containsExactly(BalanceWay.Kind.TWO_EXPOSURES);
    }

    @Test
    void onlyWhatIsInTheBagIsOffered() {
        assertThat(ways(4, 0.2, 1.5, 3.0))
                .filteredOn(w -> w.kind() == BalanceWay.Kind.GRADUATED)
                .extracting(BalanceWay::stops)
                .containsExactly(3.0, 1.5);
    }

    @Test
    void aBrighterForegroundTurnsTheFilterUpsideDown() {
        BalanceWay way = ways(-2.5, 0.02).get(0);
        assertThat(way.stops()).isEqualTo(2);
        assertThat(way.leftStops()).isCloseTo(-0.5, within(1e-12));
        assertThat(way.words()).contains("hard edge", "upside down");
        assertThat(ways(2.5, 0.02).get(0).words()).contains("hard edge").doesNotContain("upside down");
    }

    @Test
    void upToAStopLooksNatural() {
        for (double stops : new double[] {0.3, 1, -1}) {
            List<BalanceWay> ways = ways(stops, 0.2);
            assertThat(ways).hasSize(1);
            assertThat(ways.get(0).kind()).isEqualTo(BalanceWay.Kind.ONE_EXPOSURE);
            assertThat(ways.get(0).leftStops()).isEqualTo(stops);
        }
        assertThat(ways(1.01, 0.2)).extracting(BalanceWay::kind).doesNotContain(BalanceWay.Kind.ONE_EXPOSURE);
    }

    @Test
    void everyKindHasItsText() {
        assertThat(List.of(BalanceWay.Kind.values()))
                .extracting(BalanceWay.Kind::text)
                .containsExactly("graduated", "two exposures", "one exposure");
    }
}
