package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Powers;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole tables of the trade, row by row. */
class ExposureTablesReferenceTest {

    /** ISO 517 series of f-numbers in thirds, Av = i/3, from memory. */
    @ParameterizedTest
    @CsvSource({
        "1, 0", "1.1, 1", "1.2, 2", "1.4, 3", "1.6, 4", "1.8, 5", "2, 6", "2.2, 7", "2.5, 8", "2.8, 9", "3.2, 10",
        "3.5, 11", "4, 12", "4.5, 13", "5, 14", "5.6, 15", "6.3, 16", "7.1, 17", "8, 18", "9, 19", "10, 20", "11, 21",
        "13, 22", "14, 23", "16, 24", "18, 25", "20, 26", "22, 27", "25, 28", "29, 29", "32, 30"
    })
    void anFNumberMeansItsThirdOfAStop(double label, int third) {
        assertThat(ThirdStops.exactFNumber(label)).isCloseTo(Math.pow(2, third / 6.0), within(1e-9));
    }

    /** ISO 12232 series in thirds, S = 100·2^(i/3), from memory. */
    @ParameterizedTest
    @CsvSource({
        "50, -3",
        "64, -2",
        "80, -1",
        "100, 0",
        "125, 1",
        "160, 2",
        "200, 3",
        "250, 4",
        "320, 5",
        "400, 6",
        "500, 7",
        "640, 8",
        "800, 9",
        "1000, 10",
        "1250, 11",
        "1600, 12",
        "2000, 13",
        "2500, 14",
        "3200, 15",
        "6400, 18",
        "12800, 21"
    })
    void anIsoMeansItsThirdOfAStop(double label, int third) {
        assertThat(ThirdStops.exactIso(label)).isCloseTo(100 * Math.pow(2, third / 3.0), within(1e-9 * label));
    }

    /** ISO 516 series of dial times, t = 2^(−i/3), from memory. */
    @ParameterizedTest
    @CsvSource({
        "30s, 32",
        "15s, 16",
        "8s, 8",
        "4s, 4",
        "2s, 2",
        "1s, 1",
        "0.5s, 0.5",
        "1/4, 0.25",
        "1/8, 0.125",
        "1/15, 0.0625",
        "1/30, 0.03125",
        "1/60, 0.015625",
        "1/125, 0.0078125",
        "1/250, 0.00390625",
        "1/500, 0.001953125",
        "1/1000, 0.0009765625"
    })
    void aDialTimeIsAPowerOfTwo(String label, double seconds) {
        int step = ThirdStops.timeStep(seconds);
        assertThat(ThirdStops.seconds(step)).isCloseTo(seconds, within(1e-12));
        assertThat(ShutterTime.parse(ThirdStops.timeLabel(step))).isCloseTo(ShutterTime.parse(label), within(1e-12));
    }

    /** APEX, Exif Annex C (from memory): Ev = 2 log₂N − log₂t, less log₂(S/100). */
    @ParameterizedTest
    @CsvSource({
        "f/1 1s ISO100, 0",
        "f/8 1s ISO100, 6",
        "f/1 1/125 ISO100, 6.9658",
        "f/16 1/100 ISO100, 14.6439",
        "f/16 1/125 ISO100, 14.9658",
        "f/8 1/125 ISO100, 12.9658",
        "f/8 1/125 ISO200, 11.9658"
    })
    void aReadingIsAnExposureValue(String reading, double ev) {
        assertThat(MeterReading.parse(reading).exposureValue100()).isCloseTo(ev, within(1e-4));
    }

    /** ISO 5 density (from memory): stops = D / log₁₀2; factors by log₂. */
    @ParameterizedTest
    @CsvSource({
        "0.3d, 0.9966",
        "0.9d, 2.9897",
        "1.8d, 5.9795",
        "3.0d, 9.9658",
        "4.8d, 15.9453",
        "6.0d, 19.9316",
        "nd8, 3",
        "nd64, 6",
        "nd100, 6.6439",
        "nd400, 8.6439",
        "nd500, 8.9658",
        "nd1000, 9.9658",
        "nd1024, 10",
        "nd32000, 14.9658",
        "nd64000, 15.9658",
        "nd65536, 16",
        "nd100000, 16.6096"
    })
    void aFilterTakesItsStops(String typed, double stops) {
        Filter filter = Filter.parse(typed);
        assertThat(filter.stops()).isCloseTo(stops, within(1e-4));
        assertThat(filter.factor()).isCloseTo(Math.pow(10, filter.density()), within(1e-6 * filter.factor()));
    }

    /** Arithmetic of the handbooks: t′ = t·2^stops. */
    @ParameterizedTest
    @CsvSource({
        "1/100, 10, 10.24",
        "1/125, 10, 8.192",
        "0.0078125, 10, 8", // 1/125 on the dial is 1/128 s
        "1/60, 10, 17.067",
        "1/60, 6, 1.0667",
        "1/30, 16, 2184.5",
        "1/15, 16, 4369.1",
        "1/60, nd1000, 16.667",
        "1/30, nd64000, 2133.3"
    })
    void aTimeBehindAFilterIsLongerByItsFactor(String time, String filter, double seconds) {
        double metered = ShutterTime.parse(time);
        double ev = new MeterReading(8, metered, 100).exposureValue100();
        assertThat(SettingsSolver.neededSeconds(ev, Filter.parse(filter).stops(), 8, 100))
                .isCloseTo(seconds, within(1e-3 * seconds));
    }

    /** Arithmetic of the handbooks: t′ = t·(N′/N)²·S/S′; f/16 to f/11 by the labels as numbers would be 4.84 s. */
    @Test
    void apertureAndSensitivityTradeForTime() {
        double ev = MeterReading.parse("f/16 10.24s ISO100").exposureValue100();
        double eleven = MeterReading.parse("f/11 1s ISO100").fNumber();
        assertThat(SettingsSolver.neededSeconds(ev, 0, 16, 200)).isCloseTo(5.12, within(1e-9));
        assertThat(SettingsSolver.neededSeconds(ev, 0, eleven, 100)).isCloseTo(5.12, within(1e-9));
        assertThat(SettingsSolver.neededSeconds(ev, 0, 11, 100)).isCloseTo(4.84, within(1e-9));
    }

    /** Labels against their exact values: the worst of each dial, in stops (computed from the three series). */
    @Test
    void noLabelLiesFurtherFromItsValueThanThese() {
        double times = 0;
        for (int k = ThirdStops.firstTimeStep(); k <= 15; k++) {
            times = Math.max(times, Math.abs(log2(ShutterTime.parse(ThirdStops.timeLabel(k)) / ThirdStops.seconds(k))));
        }
        double sensitivities = 0;
        for (int k = -6; k <= 30; k++) {
            double exact = ThirdStops.iso(k);
            sensitivities = Math.max(sensitivities, Math.abs(log2(ThirdStops.isoNominal(exact) / exact)));
        }
        double apertures = 0;
        for (int k = 0; k <= 36; k++) {
            double exact = ThirdStops.fNumber(k);
            apertures = Math.max(apertures, Math.abs(2 * log2(ThirdStops.fNominal(exact) / exact)));
        }
        assertThat(times).isBetween(0.0931, 0.15);
        assertThat(sensitivities).isBetween(0.0228, 0.15);
        assertThat(apertures).isCloseTo(0.141, within(5e-4));
        assertThat(log2(30.0 / ThirdStops.seconds(15))).isCloseTo(-0.093, within(5e-4));
        assertThat(log2(2500 / ThirdStops.iso(14))).isCloseTo(-0.023, within(5e-4));
        assertThat(2 * log2(1.2 / ThirdStops.fNumber(2))).isCloseTo(-0.141, within(5e-4));
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }

    /** Film makers' sheets as quoted by dealers: corrected = metered^P; 60 s behind each exponent. */
    @ParameterizedTest
    @CsvSource({"1.26, 174.0", "1.31, 213.5", "1.33, 231.7", "1.43, 348.9"})
    void filmNeedsItsPower(double exponent, double seconds) {
        assertThat(new Reciprocity(exponent).corrected(60)).isCloseTo(seconds, within(0.005 * seconds));
        assertThat(new Reciprocity(exponent).corrected(1)).isEqualTo(1);
    }

    /** Calculus: mean over T minutes of 2^(−rt), in stops. */
    @ParameterizedTest
    @CsvSource({"0.2, 2, -0.1955", "0.2, 4, -0.3816", "0.2, 8, -0.7269", "0.3, 4, -0.56", "0.4, 8, -1.32"})
    void fadingCostsStops(double rate, double minutes, double stops) {
        assertThat(new ChangingLight(rate).meanStops(60 * minutes)).isCloseTo(stops, within(0.005));
    }

    @Property(tries = 60)
    void lightThatChangesAddsUp(
            @ForAll @DoubleRange(min = -1, max = 1) double rate,
            @ForAll @DoubleRange(min = 0.1, max = 900) double open) {
        int n = 2000;
        double sum = 0;
        for (int k = 0; k < n; k++) {
            sum += Math.pow(2, -rate * open * (k + 0.5) / n / 60) * open / n;
        }
        ChangingLight light = new ChangingLight(rate);
        assertThat(light.gathered(open)).isCloseTo(sum, within(1e-4 * sum));
        assertThat(light.openFor(light.gathered(open)).orElseThrow()).isCloseTo(open, within(1e-6 * open));
    }

    @Property(tries = 60)
    void stopsAdd(
            @ForAll @DoubleRange(min = 0.1, max = 15) double a, @ForAll @DoubleRange(min = 0.1, max = 15) double b) {
        Filter one = Filter.parse(Double.toString(a));
        Filter other = Filter.parse(Double.toString(b));
        assertThat(Powers.log2(one.factor() * other.factor())).isCloseTo(a + b, within(1e-9));
        assertThat(Filter.stopsOfDensity(one.density() + other.density())).isCloseTo(a + b, within(1e-9));
        double ev = 10;
        assertThat(SettingsSolver.neededSeconds(ev, a + b, 8, 100))
                .isCloseTo(SettingsSolver.neededSeconds(ev - b, a, 8, 100), within(1e-9 * Math.pow(2, a + b)));
    }
}
