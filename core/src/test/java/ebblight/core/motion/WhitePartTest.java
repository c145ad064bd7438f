package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The filter [1 −2 1] ⊗ [1 −2 1] / 6 of J. Immerkær (1996), weight by weight. */
class WhitePartTest {

    private static final int W = 7;

    /** A single bright pixel shows the weights turned over, which are the same: 4, −2 beside, 1 at the corners. */
    @Test
    void itsWeightsAreThoseOfTheSecondDifferences() {
        double[][] weights = {{1, -2, 1}, {-2, 4, -2}, {1, -2, 1}};
        for (int v = -1; v <= 1; v++) {
            for (int u = -1; u <= 1; u++) {
                float[] plane = new float[W * W];
                plane[(3 + v) * W + 3 + u] = 6;
                assertThat(WhitePart.at(plane, 3 * W + 3, W)).isCloseTo(weights[v + 1][u + 1], within(1e-12));
            }
        }
    }

    /** What is even, or even along rows or columns, has none; independent values keep their variance: Σ w² = 36/36. */
    @Test
    void shadingHasNoneAndNoiseKeepsItsVariance() {
        float[] shading = new float[W * W];
        for (int p = 0; p < shading.length; p++) {
            int row = p / W;
            shading[p] = row * row + 3f * (p % W) * (p % W);
        }
        assertThat(WhitePart.at(shading, 3 * W + 3, W)).isCloseTo(0, within(1e-6));
        double[] noise = Plain.noise(100, 100, 0, 5);
        float[] plane = Plain.narrow(noise);
        double sum = 0;
        for (int y = 1; y < 99; y++) {
            for (int x = 1; x < 99; x++) {
                double v = WhitePart.at(plane, y * 100 + x, 100);
                sum += v * v / (98 * 98);
            }
        }
        assertThat(sum).isCloseTo(1 / 12.0, within(0.08 / 12)); // variance of even chance between 0 and 1
    }
}
