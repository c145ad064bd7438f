package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
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

    private static Drift drift(int count, double spacing, Plain.Scene scene) {
        float[] everywhere = new float[WIDTH * HEIGHT];
        Arrays.fill(everywhere, 1);
        return Drift.of(Plain.frames(WIDTH, HEIGHT, count, spacing, scene), everywhere, Work.alone());
    }

    /** Clouds of chance about 0.3, four times as wide as the picture. */
    private static Plain.Scene clouds(long seed) {
        int wide = 4 * WIDTH;
        int tall = 2 * HEIGHT;
        double[] field = Plain.noise(wide, tall, 3, seed);
        return (x, y, shift) -> 0.3 + Plain.between(field, wide, tall, x + 2.0 * WIDTH - shift, y + HEIGHT / 2.0) - 0.5;
    }

    /** Clouds that go by seven pixels from frame to frame, too far for a fit that begins at rest. */
    @Test
    void fastCloudsAreFound() {
        Plain.Scene clouds = clouds(81);
        Drift drift = drift(12, 1, (x, y, t) -> clouds.light(x, y, 7 * t));
        assertThat(drift.told()).isTrue();
        assertThat(drift.flow().u(48, 32)).isCloseTo(7, within(0.15));
        assertThat(drift.flow().v(48, 32)).isCloseTo(0, within(0.15));
        assertThat(drift.relativeError()).isBetween(0.002, 0.1);
    }

    /**
     * A sky in perspective: dx/dt = a + b (x − c), so that what is at x was at c − a/b + (x − c + a/b) exp(−b t) a time t
     * ago.
     */
    @Test
    void speedsMayDifferAcrossTheSky() {
        double a = 2;
        double b = 0.03;
        double c = WIDTH / 2.0;
        int wide = 4 * WIDTH;
        double[] field = Plain.noise(wide, HEIGHT, 3, 82);
        Drift drift = drift(24, 0.25, (x, y, t) -> {
            double from = c - a / b + (x - c + a / b) * Math.exp(-b * t);
            return 0.3 + Plain.between(field, wide, HEIGHT, from + WIDTH, y) - 0.5;
        });
        assertThat(drift.told()).isTrue();
        assertThat(drift.flow().u(c, 32)).isCloseTo(a, within(0.1 * a));
        // the fit is held to even speeds by a little, so no slope is told too steep
        double differs = drift.flow().u(80, 32) - drift.flow().u(16, 32);
        assertThat(differs / (b * 64)).isBetween(0.6, 1.05);
    }

    /** A glow that stands behind clouds holds the fit back; in what changed there is none of it. */
    @Test
    void aGlowThatStandsDoesNotHoldTheCloudsBack() {
        Plain.Scene clouds = clouds(83);
        double speed = 3;
        Drift drift = drift(
                24,
                0.5,
                (x, y, t) -> clouds.light(x, y, speed * t)
                        + 0.02 * Math.sin(x / 3.0) * Math.sin(y / 3.5)
                        + 0.03 * Math.exp(-((x - 40) * (x - 40) + (y - 30) * (y - 30)) / 200.0));
        assertThat(drift.told()).isTrue();
        assertThat(drift.flow().u(48, 32)).isCloseTo(speed, within(0.05 * speed));
    }

    /** New clouds among the old: what is found lies within the error that is told, and that is wider. */
    @Test
    void theErrorGrowsWithWhatTheCloudsChange() {
        Plain.Scene clouds = clouds(84);
        Drift steady = drift(24, 0.5, (x, y, t) -> clouds.light(x, y, 1.5 * t));
        double[][] fresh = new double[24][];
        for (int i = 0; i < fresh.length; i++) {
            fresh[i] = Plain.noise(WIDTH, HEIGHT, 3, 900 + i / 2);
        }
        Drift changing = drift(
                24,
                0.5,
                (x, y, t) -> 0.5 * clouds.light(x, y, 1.5 * t)
                        + 0.15
                        + 0.4 * (fresh[(int) Math.rint(2 * t)][y * WIDTH + x] - 0.5));
        assertThat(steady.relativeError()).isBetween(0.002, 0.05);
        assertThat(changing.relativeError()).isBetween(2 * steady.relativeError(), 1.0);
        assertThat(steady.flow().u(48, 32)).isCloseTo(1.5, within(1.5 * steady.relativeError() + 0.02));
        assertThat(changing.flow().u(48, 32)).isCloseTo(1.5, within(1.5 * changing.relativeError()));
    }

    @Test
    void whatStandsOrOnlyFlickersDoesNotDrift() {
        Plain.Scene clouds = clouds(85);
        assertThat(drift(24, 0.5, (x, y, t) -> clouds.light(x, y, 0)).told()).isFalse();
        double[][] fresh = new double[24][];
        for (int i = 0; i < fresh.length; i++) {
            fresh[i] = Plain.noise(WIDTH, HEIGHT, 0, 900 + i);
        }
        Plain.Scene flicker = (x, y, t) -> fresh[(int) Math.rint(2 * t)][y * WIDTH + x];
        assertThat(drift(24, 0.5, flicker).told()).isFalse();
        assertThat(drift(1, 0.5, (x, y, t) -> clouds.light(x, y, 0)).told()).isFalse();
        assertThat(Drift.none(3, 4)).isEqualTo(new Drift(Flow.none(3, 4), 0, 1));
    }

    /** u = 1 + 2 X with X from the middle in halves: over the columns 0 to 47 of 96 the mean of X is (23.5 − 48)/48. */
    @Test
    void theMeanIsThatOfThePlacesMarked() {
        Drift drift = new Drift(new Flow(1, 2, 0, -3, 0, 1, WIDTH, HEIGHT), 0.5, 0.1);
        float[] mask = new float[WIDTH * HEIGHT];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = p % WIDTH < 48 ? 0.6f : 0.5f;
        }
        double[] velocity = drift.meanVelocity(mask);
        assertThat(velocity[0]).isCloseTo(1 + 2 * (23.5 - 48) / 48, within(1e-9));
        assertThat(velocity[1]).isCloseTo(-3 + (31.5 - 32) / 48, within(1e-9));
        assertThat(drift.meanVelocity(new float[WIDTH * HEIGHT])).containsExactly(0, 0);
    }
}
