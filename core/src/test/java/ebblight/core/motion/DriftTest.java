package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A pattern moved by a known way between few frames, as what is left of a damaged clip: speed is way by time. */
class DriftTest {

    private static final int WIDTH = 96;
    private static final int HEIGHT = 64;

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5})
    void fewFramesAreEnoughForAPatternThatMovesAsOne(int count) {
        double pixelsASecond = 3;
        LuminanceFrames frames = Plain.frames(
                WIDTH,
                HEIGHT,
                count,
                1,
                (x, y, t) -> 0.3
                        + 0.1 * Math.sin((x - pixelsASecond * t) / 4) * Math.cos(y / 5.0)
                        + 0.05 * Math.sin((x - pixelsASecond * t) / 7 + y / 3.0));
        float[] everywhere = new float[WIDTH * HEIGHT];
        Arrays.fill(everywhere, 1);
        Drift drift = Drift.of(frames, everywhere, Work.alone());
        assertThat(drift.told()).isTrue();
        assertThat(drift.meanVelocity(everywhere)[0]).isCloseTo(pixelsASecond, within(0.1 * pixelsASecond));
        assertThat(drift.meanVelocity(everywhere)[1]).isCloseTo(0, within(0.1 * pixelsASecond));
    }
}
