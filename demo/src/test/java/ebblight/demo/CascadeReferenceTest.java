package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CascadeReferenceTest {

    private static final int SIDE = 256;
    private static final double TILE_METRES = 600;

    /**
     * One wave alone runs the way it is given, at the speed g / ω of deep water (Stewart, Introduction to Physical
     * Oceanography, 16.5). Its wavenumber is jittered by half a grid step, which is 1.3 % of it and half of that in ω.
     */
    @ParameterizedTest
    @ValueSource(ints = {40, 80})
    void aWaveRunsAtTheSpeedOfDeepWater(int wavesAcross) {
        double k = 2 * Math.PI * wavesAcross / TILE_METRES;
        Cascade one = new Cascade(
                SIDE, TILE_METRES, k * (1 - 1e-9), k * (1 + 1e-9), (kx, ky) -> kx > 0 && ky == 0 ? 1 : 0, new Dice(3));
        double seconds = 0.4;
        double turned = phase(one, wavesAcross, 0) - phase(one, wavesAcross, seconds);
        double omega = Math.sqrt(9.81 * k);
        double wrapped = turned - 2 * Math.PI * Math.rint((turned - omega * seconds) / (2 * Math.PI));
        assertThat(wrapped / seconds).isCloseTo(omega, within(omega * 0.5 / wavesAcross / 2 + 1e-3));
    }

    /** Phase at x = 0 of the wave that fits {@code waves} times into the tile. */
    private static double phase(Cascade cascade, int waves, double seconds) {
        FieldSpace space = cascade.space();
        cascade.slopes(seconds, space);
        cascade.heights(space);
        double c = 0;
        double s = 0;
        for (int x = 0; x < SIDE; x++) {
            double angle = 2 * Math.PI * waves * x / SIDE;
            c += space.re[x] * Math.cos(angle);
            s -= space.re[x] * Math.sin(angle);
        }
        return Math.atan2(s, c);
    }

    /** What is said of the variance of height and slope is that of the fields themselves (Parseval). */
    @Test
    void theFieldHoldsTheVarianceThatIsToldOfIt() {
        Cascade cascade = new Cascade(SIDE, TILE_METRES, 0.05, 1.1, (kx, ky) -> kx > 0 ? 1e-3 : 0, new Dice(9));
        FieldSpace space = cascade.space();
        cascade.slopes(2.5, space);
        assertThat(variance(space.re) / cascade.slopeVariance(true, 0, 0)).isCloseTo(1, within(2e-3));
        assertThat(variance(space.im) / cascade.slopeVariance(false, 0, 0)).isCloseTo(1, within(2e-3));
        cascade.heights(space);
        assertThat(variance(space.re) / cascade.heightVariance()).isCloseTo(1, within(2e-3));
    }

    private static double variance(float[] field) {
        double sum = 0;
        double squares = 0;
        for (float v : field) {
            sum += v;
            squares += (double) v * v;
        }
        return squares / field.length - sum / field.length * sum / field.length;
    }
}
