package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Noise that was drawn with a known variance at every luminance; a tenth of it is what chance moves in so few blocks. */
class NoiseModelTest {

    private static final int W = 160;
    private static final int H = 64;

    /** Light from 0.1 at the left to 0.6 at the right, its noise, and waves where {@code x} is beyond {@code calmTo}. */
    private static NoiseModel model(int count, int height, DoubleUnaryOperator variance, int calmTo) {
        Dice dice = new Dice(51);
        LuminanceFrames frames = Plain.frames(W, height, count, 0.1, (x, y, t) -> {
            double light = 0.1 + 0.5 * x / W;
            double waves = x > calmTo ? 0.05 * Math.sin(2.5 * x + 1.9 * y + 23 * t) : 0;
            return Math.max(0, light + Math.sqrt(variance.applyAsDouble(light)) * dice.normal() + waves);
        });
        return NoiseModel.of(frames, frames.mean(0, count));
    }

    private static void tells(NoiseModel model, DoubleUnaryOperator variance, double... lights) {
        for (double light : lights) {
            double truth = variance.applyAsDouble(light);
            assertThat(model.at(light)).as("at %s", light).isCloseTo(truth, within(0.15 * truth));
        }
    }

    @Test
    void photonsAndReadNoiseAreALine() {
        DoubleUnaryOperator variance = light -> 2e-4 * light + 5e-5;
        tells(model(20, H, variance, W), variance, 0.15, 0.35, 0.55);
        tells(model(2, 2 * H, variance, W), variance, 0.35);
        tells(model(60, H, variance, W), variance, 0.15, 0.35, 0.55); // every second pair of frames
    }

    /** The brighter third is all waves: nothing there is calm, and the line from the rest holds. */
    @Test
    void brightnessesThatHoldNothingCalmCountLittle() {
        DoubleUnaryOperator variance = light -> 2e-4 * light + 5e-5;
        NoiseModel found = model(20, H, variance, 2 * W / 3);
        tells(found, variance, 0.15, 0.3);
        assertThat(found.at(0.55)).isCloseTo(variance.applyAsDouble(0.55), within(0.4 * variance.applyAsDouble(0.55)));
    }

    @Test
    void neitherTermIsBelowNought() {
        NoiseModel falling = model(20, H, light -> 1e-4 * (0.8 - light), W);
        assertThat(falling.slope()).isZero();
        assertThat(falling.at(0.35)).isBetween(1e-4 * 0.2, 1e-4 * 0.6);
        NoiseModel bent = model(20, H, light -> 1e-3 * light * light, W);
        assertThat(bent.floor()).isZero();
        assertThat(bent.at(0.35)).isBetween(1e-3 * 0.35 * 0.1, 1e-3 * 0.35 * 0.6);
        assertThat(new NoiseModel(2, 3).at(5)).isEqualTo(13);
        assertThat(new NoiseModel(2, 3).at(-5)).isEqualTo(3);
    }

    @Test
    void aPictureTooSmallOrOfOneFrameTellsNearlyNone() {
        DoubleUnaryOperator variance = light -> 1e-3;
        assertThat(model(20, 16, variance, W).at(0.3)).isLessThan(1e-6);
        assertThat(model(1, H, variance, W).at(0.3)).isLessThan(1e-6);
    }
}
