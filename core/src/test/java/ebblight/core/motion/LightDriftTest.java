package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Light that fades by a known number of stops a minute; one stop is a factor of two. */
class LightDriftTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;

    @Test
    void fadingIsFoundOverAnEvenPicture() {
        for (double stops : new double[] {-1.5, 0.5, 2}) {
            LightDrift drift = drift(13, (x, y, t) -> 0.4 * Math.pow(2, -stops * t / 60));
            assertThat(drift.stopsPerMinute()).isCloseTo(stops, within(1e-4));
        }
    }

    /** The gains are what the light was, against its geometric mean: half a minute apart 2⁻¹ at one stop in 30 s. */
    @Test
    void gainsAreTheLightAgainstItsMean() {
        float[] gain = drift(3, (x, y, t) -> 0.4 * Math.pow(2, -t / 30)).gain();
        assertThat((double) gain[0] * gain[1] * gain[2]).isCloseTo(1, within(1e-5));
        assertThat(gain[1] / gain[0]).isCloseTo((float) Math.pow(2, -5 / 30.0), within(1e-5f));
        assertThat(gain[2] / gain[1]).isCloseTo((float) Math.pow(2, -5 / 30.0), within(1e-5f));
    }

    /** Waves over the lower half, each cell with a phase of its own, and a wall that differs in light from place to place. */
    @Test
    void wavesDoNotHideIt() {
        LightDrift drift = drift(
                13,
                (x, y, t) -> (y < 24 ? 0.2 + 0.004 * x : 0.4 + 0.3 * Math.sin(t + (x >> 3) + 3.0 * (y >> 3)))
                        * Math.pow(2, -0.5 * t / 60));
        assertThat(drift.stopsPerMinute()).isCloseTo(0.5, within(1e-3));
    }

    /** A rising tide of glitter over three fifths of the view: the calm rest tells that the light stands. */
    @Test
    void theCalmPartsTellNotTheMost() {
        LightDrift drift = drift(13, (x, y, t) -> {
            boolean calm = ((x >> 3) < 3 && (y >> 3) < 6) || ((x >> 3) == 3 && (y >> 3) < 2);
            double glitter = 0.9 * (new Dice((x >> 3) + 31L * (y >> 3) + 977L * Math.round(t)).even() - 0.5);
            return calm ? 0.2 + 0.003 * x : 0.2 * Math.pow(2, t / 60) * (1 + glitter);
        });
        assertThat(drift.stopsPerMinute()).isCloseTo(0, within(1e-3));
    }

    @Test
    void aPassingSwellOfLightIsNoFading() {
        LightDrift drift = drift(13, (x, y, t) -> x < 24 && t > 20 && t < 40 ? 0.8 : 0.2);
        assertThat(drift.stopsPerMinute()).isCloseTo(0, within(1e-6));
        for (float g : drift.gain()) {
            assertThat(g).isCloseTo(1, within(1e-6f));
        }
    }

    @Test
    void twoFramesTellNoFadingBlackTellsNothing() {
        assertThat(drift(2, (x, y, t) -> 0.5 - 0.01 * t).stopsPerMinute()).isZero();
        assertThat(drift(9, (x, y, t) -> 0).stopsPerMinute()).isCloseTo(0, within(1e-12));
    }

    private static LightDrift drift(int count, Plain.Scene scene) {
        float[][] frames = new float[count][WIDTH * HEIGHT];
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = 5 * i;
            for (int p = 0; p < WIDTH * HEIGHT; p++) {
                frames[i][p] = (float) scene.light(p % WIDTH, p / WIDTH, times[i]);
            }
        }
        return LightDrift.of(frames, WIDTH, HEIGHT, times);
    }
}
