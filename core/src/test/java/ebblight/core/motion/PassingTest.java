package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** People drawn on a wall: how much of the time, how dark. */
class PassingTest {

    private static final int WIDTH = 32;
    private static final NoiseModel NOISE = new NoiseModel(0, 1e-6);

    /** Three of ten frames at 0.2 before a wall of 0.6: covered 0.3, contrast 0.4/0.6, veil 0.2; elsewhere nobody. */
    @Test
    void aPlaceIsCoveredNowAndThen() {
        Passing passing = passing((x, y, t) -> x < 4 && t >= 3 && t < 6 ? 0.2 : 0.6);
        assertThat(passing.coveredShare()).isCloseTo(0.3, within(1e-9));
        assertThat(passing.contrast()).isCloseTo(2 / 3.0, within(1e-3));
        assertThat(passing.veil()).isCloseTo(0.2, within(1e-3));
    }

    /** Places of 0.1 and 0.3 of the time: 0.2 in the mean; contrasts 1/2 and 1/6: 1/3. */
    @Test
    void placesCountAlike() {
        Passing passing = passing((x, y, t) -> x < 4 && t == 5 ? 0.9 : x >= 4 && x < 8 && t >= 3 && t < 6 ? 0.7 : 0.6);
        assertThat(passing.coveredShare()).isCloseTo(0.2, within(1e-9));
        assertThat(passing.contrast()).isCloseTo(1 / 3.0, within(1e-3));
    }

    /** Somebody stands there for six of ten frames: the wall is what it begins and ends with. */
    @Test
    void whoStandsForMostOfTheClipIsNoWall() {
        Passing passing = passing((x, y, t) -> x < 4 && t >= 2 && t < 8 ? 0.2 : 0.6);
        assertThat(passing.coveredShare()).isCloseTo(0.6, within(1e-9));
        assertThat(passing.contrast()).isCloseTo(2 / 3.0, within(1e-3));
    }

    /** A shutter opened for good: it begins and ends with another light, so the median holds. */
    @Test
    void whatDoesNotReturnIsMeasuredFromItsMedian() {
        assertThat(passing((x, y, t) -> x < 4 && t < 3 ? 0.2 : 0.6).coveredShare())
                .isCloseTo(0.3, within(1e-9));
    }

    @Test
    void nobodyPasses() {
        assertThat(passing((x, y, t) -> 0.6)).isEqualTo(Passing.NONE);
        assertThat(passing((x, y, t) -> x < 4 && t == 4 ? 0.59 : 0.6)).isEqualTo(Passing.NONE);
        assertThat(Passing.of(frames(10, (x, y, t) -> x < 4 && t == 4 ? 0.1 : 0.6), new float[WIDTH * WIDTH], NOISE))
                .isEqualTo(Passing.NONE);
        float[] all = new float[WIDTH * WIDTH];
        Arrays.fill(all, 1);
        LuminanceFrames four = frames(4, (x, y, t) -> x < 4 && t == 1 ? 0.1 : 0.6);
        assertThat(Passing.of(four, all, NOISE)).isEqualTo(Passing.NONE);
        // ± 0.1 is within four deviations of a noise of 0.05
        LuminanceFrames noisy = frames(10, (x, y, t) -> x < 4 && t == 4 ? 0.5 : 0.6);
        assertThat(Passing.of(noisy, all, new NoiseModel(0, 0.0025))).isEqualTo(Passing.NONE);
    }

    private static Passing passing(Plain.Scene scene) {
        float[] mask = new float[WIDTH * WIDTH];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = p % WIDTH < 16 ? 1 : 0;
        }
        return Passing.of(frames(10, scene), mask, NOISE);
    }

    private static LuminanceFrames frames(int count, Plain.Scene scene) {
        return Plain.frames(WIDTH, WIDTH, count, 1, scene);
    }
}
