package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Change that is the same along every row plus change of each pixel's own: by the definition of correlation, two pixels of
 * a row are then as like as the share of the variance that they have in common.
 */
class CrestsTest {

    private static final int WIDTH = 40;
    private static final int ROWS = 200;
    private static final int FRAMES = 60;

    @Test
    void whatAWholeRowSharesIsItsLikeness() {
        assertThat(likeness(1, 1)).isCloseTo(0.5, within(0.05));
        assertThat(likeness(1, 2)).isCloseTo(0.2, within(0.05));
        assertThat(likeness(1, 0)).isCloseTo(1, within(1e-6));
    }

    @Test
    void pixelsOfTheirOwnHaveNone() {
        assertThat(likeness(0, 1)).isCloseTo(0, within(0.01));
    }

    private static double likeness(double ofRow, double ofPixel) {
        Dice dice = new Dice(11);
        float[][] frames = new float[FRAMES][WIDTH * ROWS];
        double[] times = new double[FRAMES];
        int[] at = new int[WIDTH * ROWS];
        for (int i = 0; i < FRAMES; i++) {
            times[i] = 0.1 * i;
            for (int row = 0; row < ROWS; row++) {
                double common = ofRow * dice.normal();
                for (int x = 0; x < WIDTH; x++) {
                    at[row * WIDTH + x] = row * WIDTH + x;
                    frames[i][row * WIDTH + x] = (float) (common + ofPixel * dice.normal());
                }
            }
        }
        return Crests.of(PixelSeries.of(frames, times, at), at, WIDTH);
    }
}
