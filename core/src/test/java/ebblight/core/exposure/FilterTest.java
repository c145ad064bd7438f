package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Filters as they are engraved; a polariser takes 1 to 2 stops (common practice). */
class FilterTest {

    @ParameterizedTest
    @CsvSource({
        "6, NEUTRAL, 6",
        "ND8, NEUTRAL, 3",
        "' 10 ', NEUTRAL, 10",
        "30, NEUTRAL, 30",
        "pol, POLARISER, 1.5",
        "POL, POLARISER, 1.5",
        "grad2, GRADUATED, 2",
        "vnd5, VARIABLE, 5",
        "vnd2-8, VARIABLE, 5",
        "vnd3-4, VARIABLE, 3.5"
    })
    void aFilterIsReadWithItsKind(String typed, Filter.Kind kind, double stops) {
        Filter filter = Filter.parse(typed);
        assertThat(filter.kind()).isEqualTo(kind);
        assertThat(filter.stops()).isCloseTo(stops, within(1e-12));
        assertThat(filter.name()).isEqualTo(typed.trim());
        assertThat(filter.measured()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "", "0", "-3", "31", "nd1", "nd0.5", "nd", "ndx", "d", "0d", "10d", "grad", "grad0", "grad31", "vnd",
                "vnd2-", "vnd-8", "vnd2-60", "vnd0", "red"
            })
    void whatIsNoFilterIsRefused(String typed) {
        assertThatThrownBy(() -> Filter.parse(typed))
                .isInstanceOf(UnreadableTextException.class)
                .hasMessageStartingWith("\"" + typed + "\"")
                .hasMessageContaining("stops");
    }

    /** Engraved densities hold to a third of a stop, those of the densest filters to two thirds (common practice). */
    @ParameterizedTest
    @CsvSource({"3, 0.3333333", "10, 0.3333333", "nd1000, 0.3333333", "16, 0.6666667", "nd64000, 0.6666667"})
    void anEngravedDensityIsNotExact(String typed, double rangeStops) {
        assertThat(Filter.parse(typed).rangeStops()).isCloseTo(rangeStops, within(1e-6));
    }

    /** By its marks a variable filter is told worse than any other; a polariser's loss depends on how it is turned. */
    @Test
    void filtersThatTurnAreToldWorse() {
        double fixed = Filter.parse("5").rangeStops();
        assertThat(Filter.parse("pol").rangeStops()).isGreaterThan(fixed);
        assertThat(Filter.parse("vnd5").rangeStops()).isGreaterThan(fixed);
    }

    @Test
    void measuringNarrowsTheRange() {
        Filter measured = Filter.parse("10").withMeasured(10.3);
        assertThat(measured.name()).isEqualTo("10");
        assertThat(measured.kind()).isEqualTo(Filter.Kind.NEUTRAL);
        assertThat(measured.stops()).isEqualTo(10.3);
        assertThat(measured.measured()).isTrue();
        assertThat(measured.rangeStops()).isBetween(0.01, 0.1);
    }

    @Test
    void aFilterTakesNoneToThirtyStops() {
        for (double stops : new double[] {0, 30}) {
            assertThat(new Filter("x", Filter.Kind.NEUTRAL, stops, 0, true).stops())
                    .isEqualTo(stops);
        }
        for (double stops : new double[] {-0.01, 30.01, Double.NaN}) {
            assertThatThrownBy(() -> new Filter("x", Filter.Kind.NEUTRAL, stops, 0, true))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("0 to 30 stops");
        }
    }
}
