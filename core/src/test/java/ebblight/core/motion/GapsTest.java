package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Memory that fades as exp(−s/τ), sums over it worked by hand (G. I. Taylor 1922; geometric series). */
class GapsTest {

    /** ρ = exp(−Δ/τ) gives τ = −Δ/ln ρ: with Δ = 2 s and ρ = e⁻² it is 1 s. */
    @Test
    void likenessOfNeighboursTellsTheMemory() {
        Gaps gaps = Gaps.of(2, Math.exp(-2));
        assertThat(gaps.likelyMemory()).isCloseTo(1, within(1e-12));
        assertThat(gaps.leastMemory()).isBetween(0.05 * 2, gaps.likelyMemory());
    }

    @Test
    void neighboursWithNothingInCommonLeaveAShortMemory() {
        Gaps gaps = Gaps.of(3, 0);
        assertThat(gaps.likelyMemory() / 3).isBetween(1 / 20.0, 1 / 3.0);
        assertThat(gaps.leastMemory() / 3).isCloseTo(1 / 20.0, within(1e-3));
        assertThat(Gaps.of(3, -1)).isEqualTo(gaps);
    }

    @Test
    void neighboursThatAreTheSameHideNothing() {
        assertThat(Gaps.of(3, 1).likely(30)).isCloseTo(1, within(1e-3));
    }

    /**
     * Δ = 1, τ = 1/4, ρ = e⁻⁴ = 0.0183156. One gap: 2τ(1 − τ(1 − ρ)) = 0.3772895 over the (1 + ρ)/2 = 0.5091578 of the mean
     * of both ends is 0.741007. Without end: 2τ(1 − ρ)/(1 + ρ) = 0.482014. At four gaps a quarter of the way remains:
     * 0.482014 + 0.258993/4 = 0.546762. Half a gap: 1 − (1 − e⁻²)/2 = 0.5676676 over 1 − 0.9816844/4 = 0.7545789.
     */
    @Test
    void exposuresLeaveLessThanMeansOfFrames() {
        Gaps gaps = new Gaps(1, 0.25, 0.1);
        assertThat(gaps.likely(1)).isCloseTo(0.741007, within(1e-6));
        assertThat(gaps.likely(4)).isCloseTo(0.546762, within(1e-6));
        assertThat(gaps.likely(1e9)).isCloseTo(0.482014, within(1e-6));
        assertThat(gaps.likely(0.5)).isCloseTo(0.752297, within(1e-6));
        for (double seconds : new double[] {0.1, 0.5, 1, 4, 100}) {
            assertThat(gaps.least(seconds)).isLessThan(gaps.likely(seconds));
        }
    }

    @Test
    void nothingIsHiddenWithoutTimeOrGap() {
        assertThat(new Gaps(1, 0.25, 0.1).likely(0)).isEqualTo(1);
        assertThat(new Gaps(0, 0.25, 0.1).least(5)).isEqualTo(1);
        assertThat(new Gaps(1, 50, 50).likely(1)).isEqualTo(1); // the formula alone says 1.00003
    }

    /** Below one gap: V of the exposure, 0.75 − … of Taylor, over the mean of two frames joined by a line. */
    @Test
    void atOneGapBothRulesMeet() {
        Gaps gaps = new Gaps(2, 0.5, 0.2);
        assertThat(gaps.likely(2)).isCloseTo(gaps.likely(2 - 1e-9), within(1e-6));
        // 0.377290 of the exposure (T = 4τ) over (1 + e⁻⁴)/2
        assertThat(gaps.likely(2)).isCloseTo(0.741007, within(1e-5));
    }
}
