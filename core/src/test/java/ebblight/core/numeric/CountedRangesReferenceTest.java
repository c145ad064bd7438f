package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountedRangesReferenceTest {

    /** Places of the order statistics that hold the median with 95 %: binomial tables (Conover 1999; from memory). */
    @ParameterizedTest
    @CsvSource({"6, 1", "8, 1", "9, 2", "10, 2", "15, 4", "20, 6", "25, 8", "30, 10", "50, 18", "100, 40"})
    void aMediansRangeLiesAtThePlacesOfTheTables(int count, int place) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = count - i;
        }
        MedianRange range = MedianRange.of(values).orElseThrow();
        assertThat(range.low()).isEqualTo(place);
        assertThat(range.high()).isEqualTo(count + 1 - place);
    }

    @Test
    void fiveValuesAreTooFew() {
        assertThat(MedianRange.of(1, 2, 3, 4, 5)).isEmpty();
    }

    @Test
    void aboveTheTableThePlacesGoOnWithoutAStep() {
        assertThat(MedianRange.place(201) - MedianRange.place(200)).isBetween(0, 1);
    }

    /** Score intervals: 8 of 10 gives 0.490 to 0.943, none of 20 gives 0 to 0.161 (Newcombe 1998; from memory). */
    @ParameterizedTest
    @CsvSource({"8, 10, 0.4902, 0.9433", "0, 20, 0, 0.1611", "15, 148, 0.0624, 0.1605"})
    void aSharesRangeIsTheScoreInterval(int yes, int count, double low, double high) {
        ShareRange range = ShareRange.of(yes, count);
        assertThat(range.low()).isCloseTo(low, within(5e-4));
        assertThat(range.high()).isCloseTo(high, within(5e-4));
    }
}
