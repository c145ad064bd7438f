package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Taylor's hypothesis of 1938: a pattern that lives long is carried past unchanged, f(x, t) = f(x − u t, 0). */
class DriftingFieldReferenceTest {

    private static final int COLUMNS = 64;
    private static final int ROWS = 64;

    @Test
    void aPatternThatLivesForEverIsOnlyCarried() {
        DriftingField field = field(1e9);
        float[] before = at(field, 0);
        float[] after = at(field, 3);
        for (int y = 0; y < ROWS; y++) {
            for (int x = 0; x < COLUMNS; x++) {
                int from = Math.floorMod(y - 3, ROWS) * COLUMNS + Math.floorMod(x - 6, COLUMNS);
                assertThat(after[2 * (y * COLUMNS + x)]).isCloseTo(before[2 * from], within(1e-3f));
            }
        }
    }

    /** Where each part turns at a rate drawn from a normal law, the likeness falls as exp(−t² / 2τ²), its transform. */
    @Test
    void aPatternThatLivesBrieflyForgetsItselfAtTheRateOfItsLifetime() {
        double lifetime = 2;
        DriftingField field = field(lifetime);
        float[] before = at(field, 0);
        float[] after = at(field, 2);
        double together = 0;
        double alone = 0;
        for (int y = 0; y < ROWS; y++) {
            for (int x = 0; x < COLUMNS; x++) {
                int from = Math.floorMod(y - 2, ROWS) * COLUMNS + Math.floorMod(x - 4, COLUMNS);
                together += after[2 * (y * COLUMNS + x)] * (double) before[2 * from];
                alone += before[2 * from] * (double) before[2 * from];
            }
        }
        assertThat(together / alone).isCloseTo(Math.exp(-0.5), within(0.06));
    }

    /** Two columns and one row a second. */
    private static DriftingField field(double lifetimeSeconds) {
        DriftingField.Part part = new DriftingField.Part() {
            @Override
            public double amplitude(double kx, double ky) {
                return kx * kx + ky * ky < 4 ? 1 : 0;
            }

            @Override
            public double lifetimeSeconds(double kx, double ky) {
                return lifetimeSeconds;
            }
        };
        return new DriftingField(COLUMNS, ROWS, part, 2, 1, 8);
    }

    private static float[] at(DriftingField field, double seconds) {
        DriftingField.State state = field.state();
        field.at(seconds, state);
        return state.layers;
    }
}
