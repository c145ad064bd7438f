package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The standard error of a mean by the textbook, s/√n over the cells. */
class CellMeanTest {

    @Test
    void nothingHasNoMean() {
        CellMean none = new CellMean(8, 8);
        assertThat(none.count()).isZero();
        assertThat(none.mean()).isZero();
        assertThat(none.error()).isZero();
    }

    /** In 8 × 8 pixels each has its own cell: 1, 2, 6 have mean 3, s² = (4 + 1 + 9)/2 = 7, error √(7/3). */
    @Test
    void pixelsOfTheirOwnCells() {
        CellMean mean = new CellMean(8, 8);
        mean.add(0, 1);
        mean.add(9, 2);
        mean.add(63, 6);
        assertThat(mean.count()).isEqualTo(3);
        assertThat(mean.mean()).isEqualTo(3);
        assertThat(mean.error()).isCloseTo(Math.sqrt(7 / 3.0), within(1e-12));
    }

    /** Four alike pixels of one cell say no more than one: 1, 2, 6 in cells of 2 × 3 again. */
    @Test
    void neighboursSayNothingNew() {
        CellMean mean = new CellMean(16, 24);
        int[] corners = {0, 2 * 16 * 3 + 4, 16 * 21 + 14};
        double[] values = {1, 2, 6};
        for (int k = 0; k < 3; k++) {
            for (int y = 0; y < 3; y++) {
                for (int x = 0; x < 2; x++) {
                    mean.add(corners[k] + 16 * y + x, values[k]);
                }
            }
        }
        assertThat(mean.count()).isEqualTo(18);
        assertThat(mean.mean()).isEqualTo(3);
        assertThat(mean.error()).isCloseTo(Math.sqrt(7 / 3.0), within(1e-12));
    }

    @Test
    void oneCellTellsNoError() {
        CellMean mean = new CellMean(16, 16);
        mean.add(0, 1);
        mean.add(17, 5);
        assertThat(mean.mean()).isEqualTo(3);
        assertThat(mean.error()).isZero();
    }
}
