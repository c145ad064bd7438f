package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.optics.DepthOfField;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * What a setting costs. The weights are a judgement, so the laws are held: nothing for what is at its best, twice as much
 * for twice the stops, and the figures in the words are those of the handbooks.
 */
class CostsTest {

    private static final double F4 = ThirdStops.fNumber(12);
    private static final double F22 = ThirdStops.fNumber(27);

    /** At 8 s asked for, f/8 and ISO 100, unless said otherwise. */
    private static List<Choice.Cost> costs(Camera camera, double fNumber, double iso, String... filters) {
        SettingsRequest request = Asked.of(10, 8, 8, camera, filters);
        return Costs.of(request, request.bag(), fNumber, iso, 8, 8, true, Optional.empty());
    }

    private static List<Choice.Cost> atSeconds(double from, double to, double seconds) {
        return Costs.of(Asked.of(10, from, to), List.of(), 8, 100, seconds, seconds, true, Optional.empty());
    }

    private static Choice.Cost only(List<Choice.Cost> costs) {
        assertThat(costs).hasSize(1);
        return costs.get(0);
    }

    private static Camera lens(double focal) {
        return lens(focal, false);
    }

    private static Camera lens(double focal, boolean darkFrame) {
        return new Camera(
                ThirdStops.fNumber(9),
                F22,
                25,
                6400,
                100,
                32,
                ThirdStops.fNumber(15),
                ThirdStops.fNumber(21),
                darkFrame,
                36,
                24,
                focal,
                true);
    }

    @Test
    void whatIsAtItsBestCostsNothing() {
        assertThat(costs(Camera.standard(), 8, 100)).isEmpty();
        assertThat(costs(Camera.standard(), ThirdStops.fNumber(15), 100)).isEmpty();
        assertThat(costs(Camera.standard(), ThirdStops.fNumber(21), 100)).isEmpty();
        assertThat(atSeconds(8, 8, 8 * Math.pow(2, 0.005))).isEmpty();
    }

    @Test
    void aTimeBesideTheWishCostsItsStops() {
        Choice.Cost third = only(atSeconds(8, 8, 8 * Math.cbrt(2)));
        assertThat(third.stops()).isCloseTo(1 / 3.0, within(1e-9));
        assertThat(third.words()).isEqualTo("0.33 stop longer than asked");
        assertThat(only(atSeconds(8, 8.05, 4)).words()).endsWith("shorter than asked");
        // in a wish from 2 to 32 s the middle is 8 s, and to be off it matters less
        Choice.Cost one = only(atSeconds(2, 32, 16));
        Choice.Cost two = only(atSeconds(2, 32, 2));
        assertThat(one.words()).isEqualTo("1 stop longer than the middle of the wish");
        assertThat(two.words()).isEqualTo("2 stops shorter than the middle of the wish");
        assertThat(one.stops())
                .isPositive()
                .isLessThan(only(atSeconds(8, 8, 16)).stops());
        assertThat(two.stops()).isCloseTo(2 * one.stops(), within(1e-9));
        assertThat(atSeconds(2, 32, 8 * Math.pow(2, 0.04))).isEmpty();
        assertThat(only(atSeconds(2, 32, 8 * Math.pow(2, 0.06))).words()).startsWith("0.1 stops longer");
    }

    /** Airy disk 2.44 λ N (REFERENCES: optics): 21.5 µm at f/16, 30.4 µm at 22.6; circle of confusion 28.8 µm. */
    @Test
    void diffractionAndWideApertures() {
        Choice.Cost sixteen = only(costs(Camera.standard(), 16, 100));
        Choice.Cost twentyTwo = only(costs(Camera.standard(), F22, 100));
        assertThat(sixteen.words()).contains("Airy disk 21 µm", "confusion of 29 µm");
        assertThat(twentyTwo.words()).contains("Airy disk 30 µm");
        assertThat(sixteen.stops()).isPositive();
        assertThat(twentyTwo.stops()).isCloseTo(2 * sixteen.stops(), within(1e-9));
        // a stop and two stops wider than the sharpest
        Choice.Cost four = only(costs(Camera.standard(), F4, 100));
        Choice.Cost wide = only(costs(Camera.standard(), ThirdStops.fNumber(9), 100));
        assertThat(four.words()).contains("wide open");
        assertThat(four.stops()).isPositive();
        assertThat(wide.stops()).isCloseTo(2 * four.stops(), within(1e-9));
    }

    /** Above the base the noise grows, below it the highlights clip, which is the worse of the two (common practice). */
    @Test
    void sensitivityAwayFromTheBase() {
        Choice.Cost one = only(costs(lens(24), 8, 200));
        Choice.Cost two = only(costs(lens(24), 8, 400));
        Choice.Cost below = only(costs(lens(24), 8, 50));
        assertThat(one.words()).startsWith("1 stop above base ISO");
        assertThat(two.words()).startsWith("2 stops above base ISO");
        assertThat(below.words()).startsWith("1 stop below base ISO");
        assertThat(one.stops()).isPositive().isLessThan(below.stops());
        assertThat(two.stops()).isCloseTo(2 * one.stops(), within(1e-9));
        assertThat(only(costs(lens(24), 8, 25)).stops()).isCloseTo(2 * below.stops(), within(1e-9));
    }

    @Test
    void everyFilterCosts() {
        Choice.Cost one = only(costs(Camera.standard(), 8, 100, "6"));
        Choice.Cost two = only(costs(Camera.standard(), 8, 100, "6", "3"));
        assertThat(one.words()).startsWith("one filter").contains("colour cast");
        assertThat(two.words()).startsWith("2 filters stacked").contains("dark corners");
        assertThat(one.stops()).isPositive();
        assertThat(two.stops()).isCloseTo(2 * one.stops(), within(1e-9));
        assertThat(only(costs(lens(25), 8, 100, "6", "3")).words()).doesNotContain("dark corners");
        assertThat(only(costs(lens(24), 8, 100, "grad2")).words()).contains("meter the foreground");
    }

    /** Polarised light changes across the sky: under about 28 mm it shows (common practice). */
    @Test
    void filtersThatTurnCostMoreOnWideLenses() {
        for (String filter : new String[] {"pol", "vnd5"}) {
            Choice.Cost wide = only(costs(lens(27), 8, 100, filter));
            Choice.Cost normal = only(costs(lens(28), 8, 100, filter));
            assertThat(wide.words()).contains("meter through it", "on a lens this wide");
            assertThat(normal.words()).contains("meter through it").doesNotContain("wide");
            assertThat(wide.stops()).isGreaterThan(normal.stops());
            assertThat(normal.stops()).isPositive();
        }
    }

    private static List<Choice.Cost> depth(double nearest, double farthest, double near, double far) {
        SettingsRequest plain = Asked.of(10, 8, 8);
        SettingsRequest request = new SettingsRequest(
                plain.meter(),
                0,
                8,
                8,
                List.of(),
                2,
                plain.camera(),
                plain.light(),
                plain.reciprocity(),
                Optional.of(new SettingsRequest.Depth(nearest, farthest)));
        return Costs.of(request, List.of(), 8, 100, 8, 8, true, Optional.of(new DepthOfField(3, near, far)));
    }

    @Test
    void depthOfFieldThatFallsShortCosts() {
        double infinite = Double.POSITIVE_INFINITY;
        assertThat(depth(2, 10, 2, 10)).isEmpty();
        assertThat(depth(2, 10, 1.5, infinite)).isEmpty();
        assertThat(depth(2, infinite, 2, infinite)).isEmpty();
        assertThat(only(depth(2, 10, 2.5, 12)).words()).endsWith("sharp from 2.5 m to 12 m");
        assertThat(only(depth(2, 10, 1.5, 9)).words()).endsWith("sharp from 1.5 m to 9 m");
        assertThat(only(depth(2, infinite, 2.5, infinite)).words()).endsWith("sharp from 2.5 m to infinity");
        assertThat(only(depth(2, infinite, 2, 1000)).stops()).isPositive();
    }

    @Test
    void bulbAndDarkFrameAreSaid() {
        SettingsRequest request = Asked.of(10, 240, 240, lens(24, true));
        List<Choice.Cost> costs = Costs.of(request, List.of(), 8, 100, 240, 240, false, Optional.empty());
        assertThat(costs).extracting(Choice.Cost::words).hasSize(2).anySatisfy(words -> assertThat(words)
                .startsWith("bulb"));
        assertThat(costs).extracting(Choice.Cost::words).anySatisfy(words -> assertThat(words)
                .contains("busy for 8 min"));
        SettingsRequest quick = Asked.of(10, 0.5, 0.5, lens(24, true));
        assertThat(Costs.of(quick, List.of(), 8, 100, 0.5, 0.5, true, Optional.empty()))
                .isEmpty();
    }

    @Test
    void theDearestComesFirstAndAllAddUp() {
        SettingsRequest request = Asked.of(10, 8, 8, lens(24, true), "6", "3", "pol");
        List<Choice.Cost> costs =
                Costs.of(request, request.bag(), F22, 400, 8 * Math.cbrt(2), 8, false, Optional.empty());
        assertThat(costs).hasSizeGreaterThan(5);
        double sum = 0;
        for (int k = 0; k < costs.size(); k++) {
            sum += costs.get(k).stops();
            assertThat(costs.get(k).stops())
                    .isLessThanOrEqualTo(costs.get(Math.max(0, k - 1)).stops());
        }
        Choice choice = new Choice(request.bag(), 9, F22, 400, 8, 8, "8s", false, 8, Optional.empty(), costs, 0, 0);
        assertThat(choice.totalCost()).isCloseTo(sum, within(1e-12));
    }
}
