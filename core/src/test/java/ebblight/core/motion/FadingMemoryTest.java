package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** V(T)/V(0) = 2τ/T·(1 − τ/T·(1 − exp(−T/τ))) of G. I. Taylor (1922), worked by hand. */
class FadingMemoryTest {

    /** T = τ: 2·(1 − (1 − 1/e)) = 2/e. Far beyond the memory 2τ/T is left: 0.02·(1 − 0.01) at a hundred memories. */
    @Test
    void aMeanKeepsWhatTaylorSays() {
        assertThat(FadingMemory.share(3, 3)).isCloseTo(2 / Math.E, within(1e-12));
        assertThat(FadingMemory.share(100, 1)).isCloseTo(0.0198, within(1e-12));
    }

    /** For T ≪ τ the series 1 − T/3τ + (T/τ)²/12 − …: 1 − 1/6000 + 1/48,000,000 at T = τ/2000. */
    @Test
    void shortExposuresKeepNearlyAll() {
        assertThat(FadingMemory.share(1, 2000)).isCloseTo(1 - 1 / 6000.0, within(3e-8));
        assertThat(FadingMemory.share(1, 1001)).isCloseTo(FadingMemory.share(1, 999), within(1e-6));
    }
}
