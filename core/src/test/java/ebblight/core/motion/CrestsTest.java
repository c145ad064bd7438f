package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Change that is the same along every row plus change of each pixel's own: by the definition of correlation, two pixels of
 * a row are then as like as the share of the variance that they have in common. The clip is long, as each row is judged by
 * itself and the mean of ratios of few blocks is a little low.
 */
class CrestsTest {

    private static final int WIDTH = 40;
    private static final int ROWS = 100;
    private static final int FRAMES = 400;

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

    /** Four crests pass in the clip, the same along every row: counted as four, among ripples of each pixel's own. */
    @Test
    void wavesAreCounted() {
        for (int waves : new int[] {2, 4}) {
            Dice dice = new Dice(12);
            float[][] frames = new float[FRAMES][WIDTH * ROWS];
            for (int i = 0; i < FRAMES; i++) {
                for (int p = 0; p < WIDTH * ROWS; p++) {
                    int row = p / WIDTH;
                    double turn = 2 * Math.PI * waves * i / FRAMES + row / 7.0;
                    frames[i][p] = (float) (Math.cos(turn) + dice.normal());
                }
            }
            assertThat(crests(frames).waves()).isCloseTo(waves, within(0.05));
        }
    }

    /** Four crests cross every row at a slant, one and a half of them side by side: nothing in common along the row. */
    @Test
    void slantingCrestsAreCountedToo() {
        Dice dice = new Dice(14);
        float[][] frames = new float[FRAMES][WIDTH * ROWS];
        for (int i = 0; i < FRAMES; i++) {
            for (int p = 0; p < WIDTH * ROWS; p++) {
                int row = p / WIDTH;
                double turn = 2 * Math.PI * (4.0 * i / FRAMES - 1.5 * (p % WIDTH) / WIDTH) + row / 7.0;
                frames[i][p] = (float) (Math.cos(turn) + 0.2 * dice.normal());
            }
        }
        Crests crests = crests(frames);
        assertThat(crests.likeness()).isLessThan(0.1);
        assertThat(crests.slanting()).isBetween(0.6, 1.0);
        assertThat(crests.waves()).isCloseTo(4, within(0.05));
    }

    /** Pixels without anything in common have a little of the best of many slants, far below that of crests. */
    @Test
    void pixelsOfTheirOwnHaveLittleSlant() {
        Dice dice = new Dice(15);
        float[][] frames = new float[FRAMES][WIDTH * ROWS];
        for (float[] frame : frames) {
            for (int p = 0; p < frame.length; p++) {
                frame[p] = (float) dice.normal();
            }
        }
        assertThat(crests(frames).slanting()).isLessThan(0.13);
    }

    /** Change that spans a tenth of the row, by definition, is what two places a tenth apart have in common. */
    @Test
    void aPatchIsNoCrest() {
        Dice dice = new Dice(13);
        float[][] frames = new float[FRAMES][WIDTH * ROWS];
        for (int row = 0; row < ROWS; row++) {
            double[] slopes = new double[5];
            for (int k = 0; k < slopes.length; k++) {
                slopes[k] = Math.signum(dice.normal());
            }
            for (int i = 0; i < FRAMES; i++) {
                for (int x = 0; x < WIDTH; x++) {
                    frames[i][row * WIDTH + x] = (float) (slopes[x * 5 / WIDTH] * i);
                }
            }
        }
        Crests crests = crests(frames);
        assertThat(crests.likeness()).isLessThan(0.06);
        assertThat(crests.patches()).isGreaterThan(0);
        // two cells apart, patches four cells wide: 10 of the 18 pairs of a row lie in one patch
        double slow = 0;
        int pairs = 0;
        for (int i = 0; i < 13; i++) {
            for (int j = i + 1; j < 13; j++) {
                double apart = (double) Math.round(j * 370 / 12.0) - Math.round(i * 370 / 12.0);
                if (apart >= 0.42 * FRAMES) {
                    slow += apart * apart / 2;
                    pairs++;
                }
            }
        }
        assertThat(crests.patches()).isCloseTo(slow / pairs * 10 / 18, within(0.06 * slow / pairs));
    }

    private static double likeness(double ofRow, double ofPixel) {
        Dice dice = new Dice(11);
        float[][] frames = new float[FRAMES][WIDTH * ROWS];
        for (int i = 0; i < FRAMES; i++) {
            for (int row = 0; row < ROWS; row++) {
                double common = ofRow * dice.normal();
                for (int x = 0; x < WIDTH; x++) {
                    frames[i][row * WIDTH + x] = (float) (common + ofPixel * dice.normal());
                }
            }
        }
        return crests(frames).likeness();
    }

    private static Crests crests(float[][] frames) {
        double[] times = new double[FRAMES];
        int[] at = new int[WIDTH * ROWS];
        for (int i = 0; i < FRAMES; i++) {
            times[i] = 0.1 * i;
        }
        for (int p = 0; p < at.length; p++) {
            at[p] = p;
        }
        return Crests.of(PixelSeries.of(frames, times, at), at, WIDTH);
    }
}
