package ebblight.imaging.grain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Noise of known variance, slope · light + floor as in EMVA 1288, is found again; what moves does not count as noise. */
class GrainTest {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;
    private static final double SLOPE = 2e-5;
    private static final double FLOOR = 1e-6;

    /** A ramp with noise; above, waves that are elsewhere in every frame. */
    private static float[] frame(int k, boolean waves) {
        SplittableRandom dice = new SplittableRandom(100 + k);
        float[] light = new float[WIDTH * HEIGHT];
        for (int p = 0; p < light.length; p++) {
            int x = p % WIDTH;
            int y = p / WIDTH;
            double mean = 0.1 + 0.6 * x / WIDTH;
            double moving = waves && y < HEIGHT / 2 ? 0.1 * Math.sin(x / 4.0 + 1.7 * k) * Math.sin(y / 3.0 - k) : 0;
            light[p] = (float) (mean + moving + Math.sqrt(SLOPE * mean + FLOOR) * dice.nextGaussian());
        }
        return light;
    }

    private static void near(Grain grain, double share) {
        for (double at : new double[] {0.15, 0.4, 0.65}) {
            assertThat(Math.sqrt(grain.variance(at) / (SLOPE * at + FLOOR))).isCloseTo(1, within(share));
        }
    }

    @Test
    void onePictureTellsItsNoise() {
        near(GrainEstimate.of(frame(0, false), WIDTH, HEIGHT), 0.1);
    }

    @Test
    void framesTellTheirNoiseThoughHalfOfThemMoves() {
        FrameGrain grain = new FrameGrain(WIDTH, HEIGHT);
        assertThat(grain.ofFrame()).isEmpty();
        for (int k = 0; k < 8; k++) {
            float[] light = frame(k, true);
            grain.add((y, row) -> System.arraycopy(light, y * WIDTH, row, 0, WIDTH));
        }
        Grain frame = grain.ofFrame().orElseThrow();
        near(frame, 0.1);
        // a mean of 16 frames has a sixteenth of the variance
        assertThat(frame.ofMean(16).variance(0.4) * 16).isCloseTo(frame.variance(0.4), within(1e-12));
    }

    @Test
    void tooSmallAPictureTellsNothing() {
        assertThat(new FrameGrain(10, 10).wanting()).isFalse();
        assertThat(GrainEstimate.of(new float[100], 10, 10).variance(0.5)).isZero();
    }
}
