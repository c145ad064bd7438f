package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Clips whose frames come again by their making. */
class RepeatsTest {

    private static final int WIDTH = 24;
    private static final int HEIGHT = 16;
    private static final int MOMENTS = 64;
    private static final double[] SEA = sea();

    @Test
    void aLoopIsFound() {
        for (int period : new int[] {8, 13}) {
            Repeats found = of(40, i -> i % period);
            assertThat(found.found()).isTrue();
            assertThat(found.periodSeconds()).isCloseTo(0.5 * period, within(1e-9));
        }
    }

    @Test
    void wavesThatGoOnDoNotRepeat() {
        Repeats none = of(40, i -> i);
        assertThat(none.found()).isFalse();
        assertThat(none.periodSeconds()).isZero();
    }

    /** Forward and back to where it began: the whole clip, 32 frames of half a second. */
    @Test
    void aClipThatRunsBackRepeatsAsAWhole() {
        assertThat(of(32, i -> Math.min(i, 31 - i)).periodSeconds()).isCloseTo(16, within(1e-9));
    }

    @Test
    void whatStandsDoesNotRepeat() {
        assertThat(of(40, i -> 0).found()).isFalse();
    }

    @Test
    void tooLittleIsNotJudged() {
        assertThat(of(7, i -> i % 3).found()).isFalse();
        float[] few = new float[WIDTH * HEIGHT];
        Arrays.fill(few, 0, 49, 1);
        assertThat(Repeats.of(frames(40, i -> i % 8), few).found()).isFalse();
    }

    private interface Moment {
        int of(int frame);
    }

    private static Repeats of(int count, Moment moment) {
        float[] moving = new float[WIDTH * HEIGHT];
        Arrays.fill(moving, WIDTH * HEIGHT / 2, WIDTH * HEIGHT, 1);
        return Repeats.of(frames(count, moment), moving);
    }

    /** The upper half stands, the lower shows a moment of the sea. */
    private static LuminanceFrames frames(int count, Moment moment) {
        return Plain.frames(WIDTH, HEIGHT, count, 0.5, (x, y, t) -> {
            int at = moment.of((int) Math.rint(t / 0.5));
            return y < HEIGHT / 2 ? 0.3 : SEA[(y * WIDTH + x) * MOMENTS + at];
        });
    }

    /** Each pixel renews itself over a few frames: neighbours are like one another, far ones are not. */
    private static double[] sea() {
        Dice dice = new Dice(5);
        double[] sea = new double[WIDTH * HEIGHT * MOMENTS];
        double wave = 0;
        for (int k = 0; k < sea.length; k++) {
            wave = 0.9 * wave + Math.sqrt(1 - 0.81) * dice.normal();
            sea[k] = Math.max(0, Math.min(1, 0.5 + 0.1 * wave));
        }
        return sea;
    }
}
