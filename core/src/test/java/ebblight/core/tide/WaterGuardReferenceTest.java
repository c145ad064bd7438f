package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** By when to be off the rock, on a tide whose hours can be worked by hand: 0 to 6 m and back, six hours each way. */
class WaterGuardReferenceTest {

    private static final Instant LOW = Instant.parse("2027-01-10T00:00:00Z");

    private static final TideTable SIX_METRES = new TideTable(List.of(
            new TideExtreme(LOW, 0, TideExtreme.Kind.LOW),
            new TideExtreme(LOW.plusSeconds(6 * 3600), 6, TideExtreme.Kind.HIGH),
            new TideExtreme(LOW.plusSeconds(12 * 3600), 0, TideExtreme.Kind.LOW)));

    private static double hours(double hours) {
        return Epoch.seconds(LOW) + 3600 * hours;
    }

    private static WaterGuard guard(double feet, OptionalDouble wayBack, double margin, Optional<Swell> swell) {
        return WaterGuard.of(SIX_METRES, feet, wayBack, margin, swell, WaterGuard.PACKING_SECONDS);
    }

    /** Cosine interpolation in twelfths of the range after each hour: .804, 3, 6, 9, 11.196 (trigonometry). */
    @Test
    void waterRunsAsHalfACosine() {
        double[] twelfths = {0, 0.804, 3, 6, 9, 11.196, 12};
        for (int hour = 0; hour <= 6; hour++) {
            assertThat(SIX_METRES.heightMetres(hours(hour))).isCloseTo(6 * twelfths[hour] / 12, within(5e-4));
            assertThat(SIX_METRES.heightMetres(hours(12 - hour))).isCloseTo(6 * twelfths[hour] / 12, within(5e-4));
        }
        // steepest at half tide: range/2 times pi over six hours
        assertThat(SIX_METRES.risingMetresPerHour(hours(3))).isCloseTo(Math.PI / 2, within(1e-9));
    }

    @Test
    void theMarginIsReachedBeforeTheWaterIs() {
        // the point lies at 3.5 m, half a metre of margin: still water at 3 m, half tide, three hours after low water
        WaterGuard guard = guard(3.5, OptionalDouble.empty(), 0, Optional.empty());
        WaterGuard.Verdict.LeaveBy leave = (WaterGuard.Verdict.LeaveBy) guard.at(hours(1), 240, 60);
        double leaveBy = Epoch.seconds(leave.leaveBy());
        assertThat(leaveBy).isBetween(hours(3) - 2.5, hours(3));
        // four minutes open, one busy, three to pack
        assertThat(leaveBy - Epoch.seconds(leave.latestStart())).isCloseTo(480, within(1e-6));
        assertThat(leave.rising()).isTrue();
    }

    @Test
    void theLowestPointOfTheWayBackRules() {
        assertThat(guard(5, OptionalDouble.of(2), 0, Optional.empty()).lowestMetres())
                .isEqualTo(2);
        assertThat(guard(2, OptionalDouble.of(5), 0, Optional.empty()).lowestMetres())
                .isEqualTo(2);
    }

    /** Stockdon et al. 2006: 0.043 √(H L₀); H 2 m, T 10 s, L₀ 156.08 m (deep-water dispersion): 0.760 m. */
    @Test
    void theMarginIsNeverUnderHalfAMetreNorUnderTheRunUp() {
        assertThat(guard(3, OptionalDouble.empty(), 0.1, Optional.empty()).marginMetres())
                .isEqualTo(0.5);
        assertThat(guard(3, OptionalDouble.empty(), 1.2, Optional.empty()).marginMetres())
                .isEqualTo(1.2);
        Optional<Swell> swell = Optional.of(new Swell(2, 10));
        assertThat(swell.get().lengthMetres()).isCloseTo(156.08, within(0.1));
        assertThat(guard(3, OptionalDouble.empty(), 0, swell).marginMetres()).isCloseTo(0.760, within(0.001));
        assertThat(guard(3, OptionalDouble.empty(), 1, swell).marginMetres()).isEqualTo(1);
        assertThatThrownBy(() -> new WaterGuard(SIX_METRES, 3, 0.4, 180)).hasMessageContaining("0.5");
    }

    @Test
    void everyHourHasItsVerdict() {
        WaterGuard guard = guard(3.5, OptionalDouble.empty(), 0, Optional.empty());
        assertThat(guard.at(hours(5), 0, 0)).isEqualTo(new WaterGuard.Verdict.Gone(true));
        assertThat(guard.at(hours(7), 0, 0)).isEqualTo(new WaterGuard.Verdict.Gone(false));
        // falling below it, and the table ends before it comes back
        WaterGuard.Verdict.NotReached after = (WaterGuard.Verdict.NotReached) guard.at(hours(10), 0, 0);
        assertThat(after.rising()).isFalse();
        assertThat(Epoch.seconds(after.before())).isBetween(hours(11), hours(12));
        assertThat(guard.at(hours(13), 0, 0)).isEqualTo(new WaterGuard.Verdict.Unknown());
        assertThat(guard(8, OptionalDouble.empty(), 0, Optional.empty()).at(hours(1), 0, 0))
                .isInstanceOf(WaterGuard.Verdict.NotReached.class);
    }

    @Test
    void itsWordsPromiseNothing() {
        assertThat(WaterGuard.CAUTION)
                .contains("weather, surge and waves", "Not for navigation", "official tables", "turn your back")
                .doesNotContainIgnoringCase("safe")
                .doesNotContainIgnoringCase("spare");
    }

    /** Half tide either way, worked by hand: between 1.5 and 4.5 m from two to four hours after low water. */
    @Test
    void spansBetweenTwoHeightsAreFoundWithTheirDirection() {
        List<TideSpans.Span> any =
                TideSpans.between(SIX_METRES, hours(0), hours(12), 1.5, 4.5, TideSpans.Direction.ANY);
        assertThat(any).hasSize(2);
        assertThat(Epoch.seconds(any.get(0).from())).isCloseTo(hours(2), within(1.0));
        assertThat(Epoch.seconds(any.get(0).to())).isCloseTo(hours(4), within(1.0));
        List<TideSpans.Span> falling =
                TideSpans.between(SIX_METRES, hours(0), hours(12), 1.5, 9, TideSpans.Direction.FALLING);
        assertThat(falling).hasSize(1);
        assertThat(Epoch.seconds(falling.get(0).from())).isCloseTo(hours(6), within(1.0));
        assertThat(Epoch.seconds(falling.get(0).to())).isCloseTo(hours(10), within(1.0));
    }
}
