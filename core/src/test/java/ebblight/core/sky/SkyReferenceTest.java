package ebblight.core.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.Oracles;
import ebblight.core.numeric.Epoch;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Sun and moon against other programs and printed examples. {@code ephem_oracle.csv}: 100 random places and times, sun
 * and events computed with PyEphem 4.1.4, moon with astronomy-engine 2.1.19.
 */
class SkyReferenceTest {

    private static final double JULIAN_EPOCH = 2_440_587.5;

    record Row(Instant at, Place place, double[] values) {

        /** Columns of the file after id, utc, lat and lon. */
        double value(int column) {
            return values[column];
        }
    }

    private static List<Row> oracle() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (String[] parts : Oracles.rows("ephem_oracle.csv")) {
            double[] values = new double[parts.length - 4];
            for (int i = 4; i < parts.length; i++) {
                values[i - 4] = parts[i].isBlank() ? Double.NaN : Double.parseDouble(parts[i].trim());
            }
            rows.add(new Row(
                    Instant.parse(parts[1]),
                    Place.of(Double.parseDouble(parts[2]), Double.parseDouble(parts[3])),
                    values));
        }
        assertThat(rows).hasSize(100);
        return rows;
    }

    @Test
    void sunStandsWithinAThousandthOfADegree() throws IOException {
        double worst = 0;
        for (Row row : oracle()) {
            Horizontal sun = new Sky(row.place(), Ephemeris.computed()).sun(Epoch.seconds(row.at()));
            worst = Math.max(worst, sun.separationDegrees(new Horizontal(row.value(0), row.value(1), 1)));
        }
        assertThat(worst).isBetween(0.0, 0.001);
    }

    @Test
    void moonStandsWithinAHundredthOfADegree() throws IOException {
        double worst = 0;
        double worstAltitude = 0;
        for (Row row : oracle()) {
            Sky sky = new Sky(row.place(), Ephemeris.computed());
            Horizontal moon = sky.moon(Epoch.seconds(row.at()));
            worst = Math.max(worst, moon.separationDegrees(new Horizontal(row.value(2), row.value(3), 1)));
            worstAltitude = Math.max(worstAltitude, Math.abs(moon.altitudeDegrees() - row.value(3)));
            MoonPhase phase = MoonPhase.at(sky.ephemeris(), Epoch.seconds(row.at()));
            assertThat(phase.fraction()).isCloseTo(row.value(5), within(0.002));
        }
        assertThat(worst).isLessThan(0.01);
        assertThat(worstAltitude).isLessThan(0.01);
    }

    @Test
    void eventsComeWithinSecondsOfTheAlmanac() throws IOException {
        SkyEvent[] columns = {
            SkyEvent.SUNRISE,
            SkyEvent.SUNSET,
            SkyEvent.CIVIL_DAWN,
            SkyEvent.CIVIL_DUSK,
            SkyEvent.NAUTICAL_DUSK,
            SkyEvent.ASTRONOMICAL_DUSK,
            SkyEvent.MOONRISE,
            SkyEvent.MOONSET
        };
        double worstSun = 0;
        double worstMoon = 0;
        for (Row row : oracle()) {
            Sky sky = new Sky(row.place(), Ephemeris.computed());
            SkyEvents events = SkyEvents.between(sky, row.at(), row.at().plusSeconds(86_400));
            for (int k = 0; k < columns.length; k++) {
                double expected = row.value(6 + k);
                boolean moon = k >= 6;
                if (Double.isNaN(expected)) {
                    assertThat(events.instant(columns[k]))
                            .as(row + " " + columns[k])
                            .isEmpty();
                    continue;
                }
                assertThat(events.instant(columns[k]))
                        .as(row.at() + " " + row.place() + " " + columns[k])
                        .isPresent();
                double off = Math.abs(events.instant(columns[k]).orElseThrow().toEpochMilli() / 1000.0 - expected);
                if (moon) {
                    worstMoon = Math.max(worstMoon, off);
                } else if (Math.abs(row.place().latitudeDegrees()) <= 60) {
                    worstSun = Math.max(worstSun, off);
                } else {
                    assertThat(off).isLessThan(30);
                }
            }
        }
        assertThat(worstSun).isLessThan(10);
        assertThat(worstMoon).isLessThan(30);
    }

    @Test
    void theWorkedExampleOfTheSolarReportComesOut() {
        // NREL/TP-560-34302, appendix A.5: 2003-10-17 12:30:30 −7 h, ΔT 67 s, 820 hPa, 11 °C
        double epoch = Epoch.seconds(Instant.parse("2003-10-17T19:30:30Z"));
        double julianDay = JULIAN_EPOCH + epoch / 86_400;
        double t = Clock.centuries(julianDay + 67 / 86_400.0);
        Nutation nutation = Nutation.at(t);
        Sky sky = new Sky(new Place(39.742476, -105.1786, 1830.14), Ephemeris.computed());
        Geocentric sun = SunTheory.at(t, nutation);
        Horizontal seen = sky.over(sun, nutation.siderealDegrees(julianDay));
        assertThat(seen.azimuthDegrees()).isCloseTo(194.34024, within(1e-5));
        assertThat(seen.altitudeDegrees()).isCloseTo(39.872046, within(1e-5));
        // its refraction: e0 + Δe with 0.016332° at 820 hPa and 11 °C; ours is for 1010 hPa and 10 °C
        double lift = Refraction.liftDegrees(seen.altitudeDegrees());
        assertThat(lift * 820 / 1010 * 283 / (273 + 11)).isCloseTo(0.016332, within(1e-5));
        // sunrise 06:12:43 and transit 11:46:04 of the report's program
        Instant day = LocalDate.of(2003, 10, 17).atStartOfDay().toInstant(ZoneOffset.ofHours(-7));
        SkyEvents events = SkyEvents.between(
                new Sky(Place.of(39.742476, -105.1786), Ephemeris.computed()), day, day.plusSeconds(86_400));
        assertNear(events, SkyEvent.SUNRISE, "2003-10-17T13:12:43Z", 2);
        assertNear(events, SkyEvent.TRANSIT, "2003-10-17T18:46:04.96Z", 1);
        // solarpositioning 2.0.9, PyEphem and astronomy-engine agree on the sunset to 1 s
        assertNear(events, SkyEvent.SUNSET, "2003-10-18T00:18:51.69Z", 2);
    }

    @Test
    void theMoonOfTheTextbookComesOut() {
        // Meeus, example 47.a: 1992-04-12 0 h TD
        double t = Clock.centuries(2_448_724.5);
        Nutation nutation = Nutation.at(t);
        Geocentric moon = MoonTheory.at(t, nutation);
        assertThat(moon.kilometres()).isCloseTo(368_409.7, within(0.1));
        assertThat(moon.rightAscensionDegrees()).isCloseTo(134.688470, within(2e-5));
        assertThat(moon.declinationDegrees()).isCloseTo(13.768368, within(2e-5));
        // example 48.a: lit fraction 0.6786
        assertThat(MoonPhase.of(SunTheory.at(t, nutation), moon).fraction()).isCloseTo(0.6786, within(0.002));
    }

    @Test
    void phasesOfTheMoonFallOnTheirDays() {
        // 2026, astronomy-engine 2.1.19 and PyEphem 4.1.4 agree within 45 s
        assertElongation("2026-01-03T10:03:00Z", 180);
        assertElongation("2026-01-18T19:52:00Z", 0);
        assertElongation("2026-02-01T22:09:00Z", 180);
        assertElongation("2026-02-17T12:01:00Z", 0);
        MoonPhase full = MoonPhase.at(Ephemeris.computed(), Epoch.seconds(Instant.parse("2026-01-03T10:03:00Z")));
        assertThat(full.words()).isEqualTo("full moon");
        assertThat(full.fraction()).isGreaterThan(0.997);
    }

    private static void assertElongation(String instant, double degrees) {
        MoonPhase phase = MoonPhase.at(Ephemeris.computed(), Epoch.seconds(Instant.parse(instant)));
        // half a degree an hour: two minutes are 0.017°
        assertThat(Math.abs(Angles.wrap180(phase.elongationDegrees() - degrees)))
                .isLessThan(0.02);
    }

    private static void assertNear(SkyEvents events, SkyEvent event, String expected, double seconds) {
        double off = events.instant(event).orElseThrow().toEpochMilli()
                - Instant.parse(expected).toEpochMilli();
        assertThat(off / 1000).as(event.word()).isCloseTo(0, within(seconds));
    }

    @Test
    void refractionIsThatOfTheTextbookAndHasNoJump() {
        // Meeus, example 16.a: true altitude 33′14.76″ is lifted by 24.618′
        assertThat(Refraction.liftDegrees((33 + 14.76 / 60) / 60) * 60).isCloseTo(24.618, within(0.001));
        assertThat(Refraction.liftDegrees(0) * 60).isCloseTo(29.0, within(0.1));
        double before = Refraction.apparentDegrees(-7);
        for (double altitude = -7; altitude < 90; altitude += 0.001) {
            double apparent = Refraction.apparentDegrees(altitude);
            assertThat(apparent - before).isBetween(0.0, 0.0012);
            before = apparent;
        }
    }

    @Test
    void polarDayAndNightAreData() {
        // Longyearbyen, 78° north: common knowledge
        Sky sky = new Sky(Place.of(78.22, 15.65), Ephemeris.computed());
        assertThat(SkyEvents.between(sky, Instant.parse("2026-06-21T00:00:00Z"), Instant.parse("2026-06-22T00:00:00Z"))
                        .polar())
                .contains(SkyEvents.Polar.DAY);
        SkyEvents winter =
                SkyEvents.between(sky, Instant.parse("2026-12-21T00:00:00Z"), Instant.parse("2026-12-22T00:00:00Z"));
        assertThat(winter.polar()).contains(SkyEvents.Polar.NIGHT);
        assertThat(winter.instant(SkyEvent.TRANSIT)).isPresent();
        // at the pole itself the sun is up around the June solstice
        Sky pole = new Sky(Place.of(90, 0), Ephemeris.computed());
        double solstice = Epoch.seconds(Instant.parse("2026-06-21T08:24:30Z"));
        assertThat(pole.sun(solstice).altitudeDegrees()).isCloseTo(23.436, within(0.005));
    }

    @Test
    void theDateLineMakesNoDifference() {
        Instant at = Instant.parse("2026-03-01T12:00:00Z");
        Horizontal east = new Sky(Place.of(-17, 180), Ephemeris.computed()).sun(Epoch.seconds(at));
        Horizontal west = new Sky(Place.of(-17, -180), Ephemeris.computed()).sun(Epoch.seconds(at));
        assertThat(east.separationDegrees(west)).isLessThan(1e-9);
    }

    @Test
    void theTableReadsAsTheTheory() {
        double from = Epoch.seconds(Instant.parse("2026-11-01T00:00:00Z"));
        TabulatedEphemeris table = new TabulatedEphemeris(from, from + 40 * 86_400);
        Sky read = new Sky(Place.of(63.4, -19.05), table);
        Sky theory = new Sky(Place.of(63.4, -19.05), Ephemeris.computed());
        for (double t = from; t <= from + 40 * 86_400; t += 4999) {
            assertThat(read.sun(t).separationDegrees(theory.sun(t))).isLessThan(1e-5);
            assertThat(read.moon(t).separationDegrees(theory.moon(t))).isLessThan(1e-5);
        }
    }
}
