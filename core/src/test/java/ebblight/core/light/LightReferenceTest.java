package ebblight.core.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.Oracles;
import ebblight.core.numeric.Epoch;
import ebblight.core.sky.Ephemeris;
import ebblight.core.sky.Place;
import ebblight.core.sky.Sky;
import java.io.IOException;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Natural light against the published fits, the glossary of the American Meteorological Society and the classic table. */
class LightReferenceTest {

    @Test
    void bothFitsGiveTheValuesOfTheirPublishedCoefficients() throws IOException {
        for (String[] row : Oracles.rows("light_curve.csv")) {
            double altitude = Double.parseDouble(row[0]);
            double piecewise = Double.parseDouble(row[1]);
            double series = Double.parseDouble(row[2]);
            assertThat(Daylight.piecewiseLux(altitude)).as(row[0]).isCloseTo(piecewise, within(1e-3 * piecewise));
            assertThat(Daylight.seriesLux(altitude)).as(row[0]).isCloseTo(series, within(1e-3 * series));
            double fits = altitude >= -6 ? 0.09 : altitude >= -12 ? 0.12 : 0.51;
            assertThat(Daylight.differenceStops(altitude)).isBetween(0.0, fits);
        }
    }

    @Test
    void twilightIsAsBrightAsTheGlossarySays() {
        // AMS Glossary of Meteorology: civil twilight falls from 585–410 lx to 3.5–2 lx, astronomical from 0.008 to
        // 6e-4
        assertThat(Daylight.piecewiseLux(-0.833)).isBetween(410.0, 585.0);
        assertThat(Daylight.piecewiseLux(-6)).isBetween(2.0, 3.5);
        assertThat(Daylight.piecewiseLux(-12)).isCloseTo(0.008, within(0.001));
        assertThat(Daylight.piecewiseLux(-18)).isCloseTo(6e-4, within(1e-4));
    }

    @Test
    void meteredLightFollowsTheConstantOfFlatReceptors() {
        // ISO 2720:1974, E = C/100·2^EV with C = 250: published table of EV and lux
        double[][] rows = {{-4, 0.156}, {0, 2.5}, {12, 10_240}, {14, 40_960}, {15, 81_920}};
        for (double[] row : rows) {
            assertThat(LightModel.exposureValue100OfLux(row[1])).isCloseTo(row[0], within(0.007));
        }
    }

    @Test
    void theClassicExposureTableHoldsWhereItApplies() {
        // ANSI PH2.7: sun EV 15 from two hours after sunrise to two before sunset, snow or sand 16, cloudy bright 13,
        // heavy overcast 12; the moonlit land at full moon −3 … −2, at the quarter −6
        assertThat(LightModel.exposureValue100OfLux(Daylight.piecewiseLux(60))).isCloseTo(15, within(1.0));
        assertThat(LightModel.exposureValue100OfLux(Daylight.piecewiseLux(30))).isCloseTo(15, within(1.0));
        assertThat(LightModel.exposureValue100OfLux(Daylight.piecewiseLux(50) / Cloud.AVERAGE.divisor()))
                .isCloseTo(13, within(1.0));
        assertThat(LightModel.exposureValue100OfLux(Daylight.piecewiseLux(50) / Cloud.DARK.divisor()))
                .isCloseTo(12, within(1.0));
        assertThat(LightModel.exposureValue100OfLux(Moonlight.lux(60, 179.999, 384_400)))
                .isBetween(-4.0, -2.0);
        assertThat(LightModel.exposureValue100OfLux(Moonlight.lux(60, 90, 384_400)))
                .isCloseTo(-6, within(1.0));
    }

    @Test
    void moonlightFollowsTheCircular() {
        // USNO Circular 171 at 60°, mean parallax: full 0.216 lx, 135° 0.086, quarter 0.0256, 60° 0.0069
        double meanParallax = 6378.14 / Math.sin(Math.toRadians(0.951));
        double[][] rows = {{179.999, 0.216}, {150, 0.118}, {135, 0.086}, {120, 0.061}, {90, 0.0256}, {60, 0.0069}};
        for (double[] row : rows) {
            assertThat(Moonlight.lux(60, row[0], meanParallax)).isCloseTo(row[1], within(0.006 * row[1] + 5e-5));
        }
        // no step where the fit ends
        assertThat(Moonlight.lux(-0.7999, 170, 384_400) / Moonlight.lux(-0.8001, 170, 384_400))
                .isCloseTo(1, within(0.01));
    }

    /** Latitude, declination, then stops a minute at 5°, 0°, −0.83°, −3°, −6°, −9°, −12°: computed from both fits. */
    private static final double[][] SLOPES = {
        {0, 0, -.087, -.205, -.241, -.334, -.410, -.383, -.232},
        {35, 0, -.071, -.168, -.197, -.273, -.335, -.312, -.188},
        {35, 23.44, -.065, -.147, -.171, -.233, -.278, -.250, -.145},
        {35, -23.44, -.060, -.147, -.174, -.244, -.305, -.290, -.179},
        {55, 0, -.050, -.118, -.138, -.191, -.232, -.214, -.127},
        {55, 23.44, -.041, -.085, -.097, -.122, -.125, -.082, Double.NaN},
        {55, -23.44, -.029, -.085, -.102, -.150, -.197, -.193, -.122},
        {65, 0, -.036, -.087, -.102, -.140, -.169, -.152, -.087},
        {65, 23.44, -.024, -.029, -.024, Double.NaN, Double.NaN, Double.NaN, Double.NaN},
        {65, -23.44, Double.NaN, -.029, -.042, -.079, -.120, -.128, -.085}
    };

    @Test
    void duskFallsAtThePublishedRate() {
        double[] altitudes = {5, 0, -0.833, -3, -6, -9, -12};
        for (double[] row : SLOPES) {
            for (int k = 0; k < altitudes.length; k++) {
                if (Double.isNaN(row[2 + k])) {
                    continue; // the sun does not come there
                }
                double degreesPerMinute = degreesPerMinute(row[0], row[1], altitudes[k]);
                double stopsPerDegree = (log2(Daylight.piecewiseLux(altitudes[k] + 0.25))
                                - log2(Daylight.piecewiseLux(altitudes[k] - 0.25)))
                        / 0.5;
                assertThat(stopsPerDegree * degreesPerMinute)
                        .as(row[0] + " " + row[1] + " " + altitudes[k])
                        .isCloseTo(row[2 + k], within(0.01));
            }
        }
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }

    private static double degreesPerMinute(double latitude, double declination, double altitude) {
        double phi = Math.toRadians(latitude);
        double delta = Math.toRadians(declination);
        double cos = (Math.sin(Math.toRadians(altitude)) - Math.sin(phi) * Math.sin(delta))
                / (Math.cos(phi) * Math.cos(delta));
        double sinHour = Math.sqrt(1 - cos * cos);
        return -0.25 * Math.cos(phi) * Math.cos(delta) * sinHour / Math.cos(Math.toRadians(altitude));
    }

    @Test
    void theModelFallsAtDuskAndFollowsTheMeter() {
        Sky sky = new Sky(Place.of(55, 0), Ephemeris.computed());
        // equinox 2026 (20 March), dusk at 55° north: sun at about −6° 36 min after sunset, falling 0.232 stops a
        // minute
        double dusk = Epoch.seconds(Instant.parse("2026-03-20T18:51:00Z"));
        LightModel model = LightModel.of(sky, Cloud.CLEAR);
        assertThat(sky.sun(dusk).altitudeDegrees()).isCloseTo(-6, within(0.6));
        assertThat(model.fadingStopsPerMinute(dusk)).isCloseTo(0.232, within(0.015));
        double dawn = Epoch.seconds(Instant.parse("2026-03-20T05:26:00Z"));
        assertThat(model.fadingStopsPerMinute(dawn)).isLessThan(-0.2);
        LightModel read = model.withReading(dusk, 3.5);
        assertThat(read.exposureValue100(dusk)).isCloseTo(3.5, within(1e-9));
        assertThat(read.exposureValue100(dusk - 600) - read.exposureValue100(dusk))
                .isCloseTo(model.exposureValue100(dusk - 600) - model.exposureValue100(dusk), within(1e-9));
        assertThat(read.rangeStops(dusk)).isLessThan(model.rangeStops(dusk));
        assertThat(LightModel.of(sky, Cloud.DARK).rangeStops(dusk)).isGreaterThan(model.rangeStops(dusk));
    }

    @Test
    void noFitChangesFasterThanTheSearchTakesForGranted() {
        // 1.65 stops a degree, from the published coefficients: what the search of the hour relies on
        for (double altitude = -19; altitude < 60; altitude += 0.01) {
            double step = log2(Daylight.piecewiseLux(altitude + 0.01)) - log2(Daylight.piecewiseLux(altitude));
            assertThat(step).as("" + altitude).isBetween(-0.03, 0.0165 + 0.03);
            double moon =
                    log2(Moonlight.lux(altitude + 0.01, 170, 384_400)) - log2(Moonlight.lux(altitude, 170, 384_400));
            if (altitude > -18) {
                assertThat(moon).as("moon " + altitude).isBetween(-0.03, 0.0165 + 0.03);
            }
        }
    }

    @Test
    void anExposureGathersTheLightItNeedsWhileDuskFalls() {
        Sky sky = new Sky(Place.of(55, 0), Ephemeris.computed());
        double dusk = Epoch.seconds(Instant.parse("2026-03-20T18:51:00Z"));
        LightModel model = LightModel.of(sky, Cloud.CLEAR);
        // calculus: light falling r stops a minute gathers T0 in −log2(1 − T0·r·ln 2)/r minutes; r hardly changes in 4
        // min
        double rate = model.fadingStopsPerMinute(dusk + 120);
        double expected = -log2(1 - 2 * rate * Math.log(2)) / rate * 60;
        double open = LightTimes.openSeconds(model, dusk, 120).orElseThrow();
        assertThat(open).isCloseTo(expected, within(0.02 * expected));
        // the light there is at four minutes after: mean over the exposure against start
        assertThat(LightTimes.meanExposureValue100(model, dusk, 240) - model.exposureValue100(dusk))
                .isCloseTo(log2((1 - Math.pow(2, -4 * rate)) / (4 * rate * Math.log(2))), within(0.02));
        // 6 stops of filter, f/8, ISO 100, two minutes
        double wanted = LightTimes.wantedExposureValue100(8, 120, 100, 6);
        assertThat(wanted).isCloseTo(log2(64.0 / 120) + 6, within(1e-9));
        double at =
                LightTimes.darkEnough(model, dusk - 7200, dusk + 7200, wanted).orElseThrow();
        assertThat(model.exposureValue100(at)).isCloseTo(wanted, within(0.01));
        assertThat(LightTimes.brightEnough(model, dusk + 3600, dusk + 7200, wanted))
                .isEmpty();
    }
}
