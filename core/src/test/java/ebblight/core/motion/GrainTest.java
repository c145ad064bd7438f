package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Crossed waves: of two that stand at right angles, a and b high, the gradients' mean products have the eigenvalues a² and
 * b² times the same factor, so the coherence is |a² − b²| / (a² + b²), whichever way they are turned (Bigün and Granlund
 * 1987, from memory).
 */
class GrainTest {

    private static final int SIZE = 96;
    private static final int MIDDLE = SIZE / 2 * SIZE + SIZE / 2;
    private static final double WAVE = 2 * Math.PI / 8;
    private static final int FRAMES = 24;

    private static LuminanceFrames crossed(double a, double b, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return Plain.frames(
                SIZE,
                SIZE,
                FRAMES,
                0.1,
                (x, y, t) -> 0.4 + a * Math.sin(WAVE * (c * x + s * y) + t) + b * Math.sin(WAVE * (c * y - s * x)));
    }

    private static double middle(LuminanceFrames frames, double noise) {
        float[] everywhere = new float[SIZE * SIZE];
        Arrays.fill(everywhere, (float) noise);
        return Grain.of(frames, everywhere)[MIDDLE];
    }

    @ParameterizedTest
    @CsvSource({
        "0.1, 0, 0",
        "0.1, 0, 90",
        "0.1, 0.05, 0",
        "0.05, 0.1, 0",
        "0.1, 0.05, 45",
        "0.1, 0.08, 30",
        "0.1, 0.1, 20"
    })
    void crossedWavesAreDrawnOutAsMuchAsTheyDiffer(double a, double b, double degrees) {
        double truth = Math.abs(a * a - b * b) / (a * a + b * b);
        assertThat(middle(crossed(a, b, degrees), 0)).isCloseTo(truth, within(0.03));
    }

    @Test
    void everyPartOfTheClipCounts() {
        // three quarters of the time along x, one along y: (3 − 1) / (3 + 1)
        double turns = 0.75 * FRAMES * 0.1 - 0.05;
        LuminanceFrames frames = Plain.frames(
                SIZE, SIZE, FRAMES, 0.1, (x, y, t) -> 0.4 + 0.1 * Math.sin(WAVE * (t < turns ? x : y) + t));
        assertThat(middle(frames, 0)).isCloseTo(0.5, within(0.05));
    }

    /** White noise has no direction: taken off, it leaves the waves nearly as they were; alone, it is not drawn out. */
    @Test
    void noiseIsTakenOff() {
        double deviation = 0.08;
        double[][] noise = new double[FRAMES][];
        for (int i = 0; i < FRAMES; i++) {
            noise[i] = Plain.noise(SIZE, SIZE, 0, 70 + i);
        }
        double[] spread = Arrays.stream(noise).flatMapToDouble(Arrays::stream).toArray();
        double mean = Arrays.stream(spread).average().orElseThrow();
        double variance = Arrays.stream(spread)
                .map(v -> (v - mean) * (v - mean))
                .average()
                .orElseThrow();
        double scale = deviation / Math.sqrt(variance);
        LuminanceFrames grainy = Plain.frames(
                SIZE,
                SIZE,
                FRAMES,
                0.1,
                (x, y, t) -> 0.5
                        + 0.1 * Math.sin(WAVE * x)
                        + scale * (noise[(int) Math.rint(t / 0.1)][y * SIZE + x] - mean));
        double known = middle(grainy, deviation * deviation);
        double unknown = middle(grainy, 0);
        assertThat(known).isBetween(0.9, 1.0);
        assertThat(unknown).isLessThan(known - 0.02);
        LuminanceFrames alone = Plain.frames(
                SIZE,
                SIZE,
                FRAMES,
                0.1,
                (x, y, t) -> 0.5 + scale * (noise[(int) Math.rint(t / 0.1)][y * SIZE + x] - mean));
        assertThat(middle(alone, deviation * deviation)).isLessThan(0.2);
    }
}
