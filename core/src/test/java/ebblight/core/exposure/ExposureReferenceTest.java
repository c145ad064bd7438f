package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Powers;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Exposure arithmetic against the APEX system (Exif 2.32 Annex C, from memory) and common practice. */
class ExposureReferenceTest {

    @Test
    void exposureValuesFollowApex() {
        // APEX: Ev = log2(N²/t) − log2(S/100)
        assertThat(new MeterReading(1, 1, 100).exposureValue100()).isCloseTo(0, within(1e-9));
        assertThat(new MeterReading(16, 0.01, 100).exposureValue100()).isCloseTo(14.6439, within(1e-4));
        assertThat(new MeterReading(8, 1 / 125.0, 100).exposureValue100()).isCloseTo(12.9658, within(1e-4));
    }

    @Test
    void labelsMeanPowersOfTwo() {
        // ISO 517 and ISO 12232 series, from memory: f/11 = 2^3.5, ISO 125 = 100·2^(1/3)
        assertThat(ThirdStops.exactFNumber(11)).isCloseTo(11.3137, within(1e-4));
        assertThat(ThirdStops.exactFNumber(5.6)).isCloseTo(5.6569, within(1e-4));
        assertThat(ThirdStops.exactFNumber(22)).isCloseTo(22.6274, within(1e-4));
        assertThat(ThirdStops.exactIso(125)).isCloseTo(125.99, within(1e-2));
        assertThat(ThirdStops.fLabel(ThirdStops.fNumber(22))).isEqualTo("f/13");
        assertThat(ThirdStops.timeLabel(15)).isEqualTo("30s");
        assertThat(ThirdStops.seconds(15)).isEqualTo(32);
        assertThat(ThirdStops.timeLabel(-18)).isEqualTo("1/60");
        assertThat(ThirdStops.timeLabel(-21)).isEqualTo("1/125");
    }

    @Test
    void filtersAreReadAsStopsFactorsAndDensities() {
        // ISO 5 density, from memory: stops = D / log10(2)
        assertThat(Filter.parse("3.0d").stops()).isCloseTo(9.9658, within(1e-4));
        assertThat(Filter.parse("nd1000").stops()).isCloseTo(9.9658, within(1e-4));
        assertThat(Filter.parse("nd64").stops()).isCloseTo(6, within(1e-9));
        assertThat(Filter.parse("nd400").stops()).isCloseTo(8.644, within(1e-3));
        assertThat(Filter.stopsOfDensity(1.8)).isCloseTo(5.9795, within(1e-4));
        assertThat(Filter.parse("16").rangeStops()).isCloseTo(2.0 / 3, within(1e-9));
        assertThatThrownBy(() -> Filter.parse("ten"))
                .hasMessageContaining("ten")
                .hasMessageContaining("expected");
    }

    @Test
    void timesBehindFiltersAreThoseOfThePhotographersTables() {
        // common practice: 1/100 s behind 10 stops is 10.24 s; twice the ISO, half the time
        double ev = new MeterReading(16, 0.01, 100).exposureValue100();
        assertThat(SettingsSolver.neededSeconds(ev, 10, 16, 100)).isCloseTo(10.24, within(1e-9));
        assertThat(SettingsSolver.neededSeconds(ev, 10, 16, 200)).isCloseTo(5.12, within(1e-9));
        // common practice: behind 16 stops 1/312 to 1/156 s become 3½ to 7 min
        assertThat(Powers.exp2(16) / 312 / 60).isCloseTo(3.5, within(0.01));
        assertThat(Powers.exp2(16) / 156 / 60).isCloseTo(7, within(0.01));
        // common practice: f/22 ISO 50 1 s is f/11 ISO 640 behind 6 stops at 1.26 s
        MeterReading dim = new MeterReading(ThirdStops.exactFNumber(22), 1, ThirdStops.exactIso(50));
        assertThat(SettingsSolver.neededSeconds(
                        dim.exposureValue100(), 6, ThirdStops.exactFNumber(11), ThirdStops.exactIso(640)))
                .isCloseTo(1.26, within(0.005));
    }

    @Test
    void fadingLightGathersItsIntegral() {
        // calculus: mean over T of 2^(−rt); r 0.2 stop/min: 2 min 0.8733, 4 min 0.7676, 8 min 0.6042
        ChangingLight light = new ChangingLight(0.2);
        assertThat(light.gathered(120) / 120).isCloseTo(0.8733, within(1e-4));
        assertThat(light.gathered(240) / 240).isCloseTo(0.7676, within(1e-4));
        assertThat(light.gathered(480) / 480).isCloseTo(0.6042, within(1e-4));
        assertThat(new ChangingLight(0.3).longestEquivalentSeconds() / 60).isCloseTo(4.81, within(0.005));
        assertThat(new ChangingLight(0.3).openFor(600)).isEmpty();
        double open = light.openFor(100).orElseThrow();
        assertThat(light.gathered(open)).isCloseTo(100, within(1e-9));
    }

    @Test
    void filmNeedsLonger() {
        // manufacturer's sheet: P 1.31: 10 s → 20.4 s; P 1.26: 60 s → 174 s
        assertThat(new Reciprocity(1.31).corrected(10)).isCloseTo(20.4, within(0.1));
        assertThat(new Reciprocity(1.26).corrected(60)).isCloseTo(174, within(0.9));
        assertThat(new Reciprocity(1.31).corrected(0.5)).isEqualTo(0.5);
    }

    @Test
    void twoSecondsByTheSixStopAtF11IsAmongTheFirstThree() {
        // common practice, where the light fits: f/11 ISO 100 wants 1/32 s without a filter
        SettingsAnswer answer =
                SettingsSolver.solve(request(new MeterReading(ThirdStops.fNumber(21), 1 / 32.0, 100), 2));
        assertThat(answer.choices().subList(0, 3)).anySatisfy(choice -> {
            assertThat(choice.filters()).extracting(Filter::name).containsExactly("6");
            assertThat(ThirdStops.fLabel(choice.fNumber())).isEqualTo("f/11");
            assertThat(choice.seconds()).isCloseTo(2, within(1e-9));
        });
        assertThat(answer.choices())
                .allSatisfy(c -> assertThat(Math.abs(c.errorStops())).isLessThan(0.17));
    }

    @Test
    void whatCannotBeReachedHasWaysOut() {
        SettingsRequest request = request(new MeterReading(16, 1 / 8000.0, 100), 86_000);
        SettingsAnswer answer = SettingsSolver.solve(request);
        assertThat(answer.choices()).isEmpty();
        assertThat(answer.ways()).hasSizeGreaterThanOrEqualTo(3);
    }

    @Test
    void typedTimesAreReadExactly() {
        assertThat(ShutterTime.parse("1/100")).isEqualTo(0.01);
        assertThat(ShutterTime.parse("30s")).isEqualTo(30);
        assertThat(ShutterTime.parse("4m30s")).isEqualTo(270);
        assertThat(ShutterTime.parse("0.8")).isEqualTo(0.8);
        for (String bad : List.of("-3s", "", "s", "4x", "1/0", "nan")) {
            assertThatThrownBy(() -> ShutterTime.parse(bad)).isInstanceOf(UnreadableTextException.class);
        }
    }

    private static SettingsRequest request(MeterReading meter, double seconds) {
        return new SettingsRequest(
                meter,
                0,
                seconds,
                seconds,
                List.of(Filter.parse("6"), Filter.parse("10"), Filter.parse("16")),
                2,
                Camera.standard(),
                ChangingLight.steady(),
                Reciprocity.none(),
                Optional.empty());
    }
}
