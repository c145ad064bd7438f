package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The transform against its definition, summed term by term in double precision. */
class FftReferenceTest {

    private static final int COLUMNS = 64;
    private static final int ROWS = 16;

    @Test
    void isTheSumThatDefinesIt() {
        Fft fft = new Fft(COLUMNS, ROWS);
        FieldSpace space = fft.space();
        Dice dice = new Dice(5);
        double power = 0;
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            space.spectrumRe[i] = (float) dice.gaussian();
            space.spectrumIm[i] = (float) dice.gaussian();
            power += Math.pow(space.spectrumRe[i], 2) + Math.pow(space.spectrumIm[i], 2);
        }
        fft.inverse(space);
        double most = 5 * Math.sqrt(COLUMNS * ROWS);
        for (int[] at : new int[][] {{0, 0}, {1, 0}, {0, 1}, {7, 5}, {63, 15}, {32, 8}}) {
            double re = 0;
            double im = 0;
            for (int ky = 0; ky < ROWS; ky++) {
                for (int kx = 0; kx < COLUMNS; kx++) {
                    double angle = 2 * Math.PI * ((double) kx * at[0] / COLUMNS + (double) ky * at[1] / ROWS);
                    int k = ky * COLUMNS + kx;
                    re += space.spectrumRe[k] * Math.cos(angle) - space.spectrumIm[k] * Math.sin(angle);
                    im += space.spectrumRe[k] * Math.sin(angle) + space.spectrumIm[k] * Math.cos(angle);
                }
            }
            int p = at[1] * COLUMNS + at[0];
            assertThat((double) space.re[p]).isCloseTo(re, within(1e-6 * most));
            assertThat((double) space.im[p]).isCloseTo(im, within(1e-6 * most));
        }
        // Parseval: without scaling, the field holds as many times the power as it has places
        double field = 0;
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            field += Math.pow(space.re[i], 2) + Math.pow(space.im[i], 2);
        }
        assertThat(field / (COLUMNS * ROWS)).isCloseTo(power, within(1e-5 * power));
    }
}
