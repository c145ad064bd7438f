package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.light.Cloud;
import ebblight.core.light.CloudCover;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Sky;
import ebblight.core.tide.Swell;
import ebblight.core.tide.TideExtreme;
import ebblight.core.tide.TideSpans;
import ebblight.core.tide.TideTable;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each wish about the hour by itself, at hours that can be worked by hand; minutes are counted from 1970. */
class ConditionsTest {

    private static final LocalTime UTC = LocalTime.fixed(ZoneOffset.UTC);
    private static final CameraView WEST = new CameraView(270, 0, 24, 36, 24);

    private static double minute(double hour) {
        return 3600 * hour;
    }

    /** The promise of every wish: until it says to look again, it holds as it did; and it does look seldom. */
    private static void leaps(Condition condition, int minutes, int mostLooks) {
        int looks = 0;
        for (int m = 0; m < minutes; looks++) {
            double margin = condition.margin(60.0 * m);
            int look = condition.look(60.0 * m, margin);
            assertThat(look).isPositive();
            for (int k = m + 1; k < Math.min(minutes, m + look); k++) {
                assertThat(condition.margin(60.0 * k) >= 0)
                        .as("minute " + k + " after " + m)
                        .isEqualTo(margin >= 0);
            }
            m = Math.min(minutes, m + look);
        }
        assertThat(looks).isLessThanOrEqualTo(mostLooks);
    }

    /** 30 left at one a minute: still held after 30, perhaps not after 31; outside, perhaps held after 30 and not before. */
    @ParameterizedTest
    @CsvSource({
        "30, 1, 0, 31", "30.5, 1, 0, 31", "-30, 1, 0, 30", "-30.5, 1, 0, 31", "30, 2, 0, 16", "-30, 2, 0, 15",
                "30, 1, 10, 21",
        "-30, 1, 10, 20", "0, 1, 0, 1", "5, 1, 5, 1", "-4, 1, 5, 1", "-0.2, 1, 0, 1", "NaN, 1, 0, 1",
                "1e9, 1e-9, 0, 100001"
    })
    void aMarginTellsWhenToLookAgain(double margin, double fastest, double jump, int minutes) {
        assertThat(Looking.again(margin, fastest, jump)).isEqualTo(minutes);
    }

    @Test
    void aRangeHasItsMargin() {
        Range range = new Range(2, 6);
        assertThat(range.margin(3)).isEqualTo(1);
        assertThat(range.margin(5.5)).isEqualTo(0.5);
        assertThat(range.margin(1)).isEqualTo(-1);
        assertThat(range.margin(9)).isEqualTo(-3);
        assertThatCode(() -> new Range(2, 2)).doesNotThrowAnyException();
        assertThatThrownBy(() -> new Range(2, 1)).hasMessageContaining("lower to the higher");
    }

    /** 22:00 to 02:00: 23:00 is an hour inside, 03:00 one past, 21:00 one before, noon ten. */
    @ParameterizedTest
    @CsvSource({"22, 0", "23, 60", "0, 120", "1, 60", "2, 0", "3, -60", "21, -60", "12, -600"})
    void hoursGoOverMidnight(double hour, double margin) {
        Condition night = ClockConditions.hours(UTC, 22 * 60, 2 * 60);
        assertThat(night.margin(minute(hour))).isEqualTo(margin);
        assertThat(night.word()).isEqualTo("hours");
        assertThat(night.unit()).isEqualTo("min");
        assertThat(night.words(0, 60)).isEqualTo("within the hours");
        leaps(night, 3 * 1440, 80);
    }

    /** 1970-01-01 was a Thursday, so Saturday begins two days on. */
    @Test
    void daysAreThoseOfTheClock() {
        Condition weekend = ClockConditions.days(UTC, Set.of(5, 6));
        assertThat(weekend.margin(minute(47.9))).isNegative();
        assertThat(weekend.margin(minute(48))).isZero();
        assertThat(weekend.margin(minute(95.9))).isZero();
        assertThat(weekend.margin(minute(96))).isNegative();
        assertThat(weekend.words(minute(50), minute(60))).isEqualTo("Saturday");
        assertThat(weekend.words(minute(50), minute(80))).isEqualTo("Saturday to Sunday");
        assertThat(weekend.word()).isEqualTo("days");
        assertThat(weekend.unit()).isEqualTo("min");
        leaps(weekend, 9 * 1440, 10);
    }

    /** The clock goes from +1 h to +2 h at 01:00 UTC of the second day. */
    @Test
    void theClockChangesItsOffset() {
        LocalTime clock = new LocalTime(List.of(
                new LocalTime.Step(Instant.EPOCH, ZoneOffset.ofHours(1)),
                new LocalTime.Step(Instant.EPOCH.plusSeconds(25 * 3600), ZoneOffset.ofHours(2))));
        assertThat(clock.minuteOfDay(minute(0))).isEqualTo(60);
        assertThat(clock.minuteOfDay(minute(25) - 1)).isEqualTo(119);
        assertThat(clock.minuteOfDay(minute(25))).isEqualTo(180);
        assertThat(clock.minuteOfDay(minute(-2))).isEqualTo(23 * 60);
        assertThat(clock.dayOfWeek(minute(-2))).isEqualTo(2);
        assertThat(clock.dayOfWeek(minute(22.9))).isEqualTo(3);
        assertThat(clock.dayOfWeek(minute(23))).isEqualTo(4);
        assertThat(clock.minutesToChange(minute(24))).isEqualTo(60);
        assertThat(clock.minutesToChange(minute(25) - 30)).isEqualTo(1);
        assertThat(clock.minutesToChange(minute(25))).isEqualTo(Integer.MAX_VALUE);
        assertThat(clock.hour(Instant.EPOCH.plusSeconds(8 * 3600 + 5 * 60))).isEqualTo("09:05");
        assertThat(clock.hour(Instant.EPOCH.plusSeconds(15 * 3600 + 45 * 60))).isEqualTo("16:45");
        leaps(ClockConditions.hours(clock, 100, 170), 3 * 1440, 60);
        leaps(ClockConditions.days(clock, Set.of(4)), 3 * 1440, 10);
        assertThatThrownBy(() -> new LocalTime(List.of())).hasMessageContaining("at least one row");
        assertThatThrownBy(() -> new LocalTime(
                        List.of(clock.steps().get(1), clock.steps().get(0))))
                .hasMessageContaining("order of time");
        assertThatThrownBy(() -> new LocalTime(
                        List.of(clock.steps().get(0), clock.steps().get(0))))
                .hasMessageContaining("order of time");
    }

    /** Civil to 6°, nautical to 12°, astronomical to 18° under; the sun rises at 50′ under (34′ of air, 16′ of disc). */
    @ParameterizedTest
    @CsvSource({
        "10, day",
        "-0.8, day",
        "-0.9, civil",
        "-5.9, civil",
        "-6.1, nautical",
        "-12.1, astronomical",
        "-18.1, night"
    })
    void everyAltitudeHasItsPartOfTheDay(double altitude, String word) {
        for (Twilight each : Twilight.values()) {
            assertThat(each.margin(altitude) >= 0)
                    .as(each.word())
                    .isEqualTo(each.word().equals(word));
            assertThat(Twilight.of(each.word())).isEqualTo(each);
        }
        assertThat(Twilight.CIVIL.margin(-4)).isCloseTo(2, within(1e-9));
        assertThatThrownBy(() -> Twilight.of("dusk")).hasMessageContaining("nautical");
    }

    /** A sun that sinks a fifth of a degree a minute from 2°: civil twilight from 50′ under, at minute 14.2, to 40. */
    @Test
    void twilightFollowsTheSun() {
        Sky sky = DrawnSky.climbing(270, 2, -0.2);
        Condition civil = new TwilightCondition(sky, Set.of(Twilight.CIVIL));
        assertThat(civil.margin(60 * 14)).isNegative();
        assertThat(civil.margin(60 * 15)).isPositive();
        assertThat(civil.margin(60 * 20)).isCloseTo(2 - 50 / 60.0, within(0.01));
        assertThat(civil.margin(60 * 39)).isPositive();
        assertThat(civil.margin(60 * 41)).isNegative();
        assertThat(civil.word()).isEqualTo("twilight");
        assertThat(civil.unit()).isEqualTo("°");
        leaps(civil, 120, 40);
        Condition both = new TwilightCondition(sky, Set.of(Twilight.DAY, Twilight.CIVIL, Twilight.NIGHT));
        assertThat(both.words(0, 60 * 39)).isEqualTo("day, civil twilight");
        assertThat(both.words(60 * 20, 60 * 30)).isEqualTo("civil twilight");
        assertThat(both.words(60 * 103, 60 * 110)).isEqualTo("night");
        assertThatThrownBy(() -> new TwilightCondition(sky, Set.of())).hasMessageContaining("at least one part");
    }

    /** Refraction at the horizon is 29′ for a true altitude of 0 (Saemundsson; REFERENCES 3): seen 0.48° high. */
    @Test
    void theSunIsTakenAsItIsSeen() {
        Sky sky = DrawnSky.climbing(270, 20, -0.2);
        Condition low = SkyConditions.sunAltitude(sky, new Range(0, 6));
        assertThat(low.margin(60 * 100)).isCloseTo(29 / 60.0, within(0.02));
        assertThat(low.margin(60 * 50)).isCloseTo(-4, within(0.2));
        assertThat(low.word()).isEqualTo("sunAltitude");
        assertThat(low.unit()).isEqualTo("°");
        assertThat(low.words(60 * 75, 60 * 85))
                .startsWith("sun 5")
                .endsWith("° high")
                .contains(" to ");
        leaps(low, 180, 70);
        // the moon stands opposite: at −20° and climbing
        Condition moon = SkyConditions.moonAltitude(sky, new Range(3, 90));
        assertThat(moon.margin(60 * 90)).isNegative();
        assertThat(moon.margin(60 * 130)).isPositive();
        Condition full = SkyConditions.moonFraction(sky, new Range(0.9, 1));
        assertThat(full.margin(0)).isCloseTo(0, within(0.01));
        assertThat(full.words(0, 600)).isEqualTo("moon 100 % lit");
        assertThat(SkyConditions.moonFraction(sky, new Range(0, 0.5)).margin(0)).isCloseTo(-50, within(0.01));
    }

    /** Half of 36 mm on 24 mm is 36.87°: a sun turning from south to west comes in at azimuth 233.1 less its radius, 16′. */
    @Test
    void theSunComesIntoThePicture() {
        Sky sky = DrawnSky.turning(180, 3, 0.25);
        Condition in = SkyConditions.sunInFrame(sky, WEST, 0, true);
        Condition out = SkyConditions.sunInFrame(sky, WEST, 0, false);
        double edge = (270 - 36.87 - 180) / 0.25;
        assertThat(in.margin(60 * (edge - 3))).isNegative();
        assertThat(in.margin(60 * (edge + 3))).isPositive();
        // on the edge itself half of the disc is in, 0.27°
        assertThat(in.margin(60 * edge)).isCloseTo(0.267, within(0.05));
        assertThat(out.margin(60 * edge)).isCloseTo(-0.267, within(0.05));
        assertThat(in.words(60 * 300, 60 * 310)).isEqualTo("sun in the picture");
        assertThat(out.words(0, 0)).isEqualTo("sun out of the picture by 53° or more");
        assertThat(out.words(0, 60 * (edge - 2))).isEqualTo("sun out of the picture");
        assertThat(out.words(0, 60 * 100)).isEqualTo("sun out of the picture by 28° or more");
        assertThat(in.unit()).isEqualTo("°");
        assertThat(in.word()).isEqualTo("sunInFrame");
        leaps(in, 400, 220);
        // behind a skyline of 5° nothing of it shows, and a sun below the horizon is not in the way
        assertThat(SkyConditions.sunInFrame(sky, WEST, 5, true).margin(60 * 360))
                .isNegative();
        assertThat(SkyConditions.sunInFrame(sky, WEST, 5, false).words(0, 60)).isEqualTo("sun under the skyline");
        assertThat(SkyConditions.sunInFrame(DrawnSky.turning(270, -5, 0.25), WEST, 0, false)
                        .words(0, 60))
                .isEqualTo("sun under the horizon");
        assertThat(SkyConditions.moonInFrame(DrawnSky.turning(90, -3, 0), WEST, 0, true)
                        .margin(0))
                .isPositive();
    }

    /** Looking west with the sun going from south: 90° left of the view, then right of it. */
    @Test
    void bearingsAreAgainstTheView() {
        Sky sky = DrawnSky.turning(180, 3, 0.25);
        Condition left = SkyConditions.sunBearing(sky, WEST, new Range(-60, -20));
        assertThat(left.margin(0)).isCloseTo(-30, within(0.01));
        assertThat(left.margin(60 * 160)).isCloseTo(10, within(0.01));
        assertThat(left.margin(60 * 300)).isCloseTo(-5, within(0.01));
        assertThat(left.words(0, 60 * 120)).isEqualTo("sun 90 to 60° left of the view");
        assertThat(left.words(60 * 340, 60 * 400)).isEqualTo("sun 5° left to 10° right of the view");
        assertThat(left.words(60 * 400, 60 * 401)).isEqualTo("sun 10° right of the view");
        assertThat(left.word()).isEqualTo("sunBearing");
        assertThat(left.unit()).isEqualTo("°");
        leaps(left, 720, 80);
        // around the back: 175° right and 170° left are fifteen degrees apart
        Condition behind = SkyConditions.sunBearing(sky, WEST, new Range(165, 175));
        assertThat(behind.margin(60 * 4 * -80)).isCloseTo(-15, within(0.01));
        // near the zenith bearings turn fast
        Condition high = SkyConditions.sunBearing(DrawnSky.turning(180, 89, 5), WEST, new Range(-60, -20));
        assertThat(high.look(0, high.margin(0))).isEqualTo(1);
    }

    private static TideTable table() {
        return new TideTable(List.of(
                new TideExtreme(Instant.EPOCH, 0, TideExtreme.Kind.LOW),
                new TideExtreme(Instant.EPOCH.plusSeconds(6 * 3600), 6, TideExtreme.Kind.HIGH),
                new TideExtreme(Instant.EPOCH.plusSeconds(12 * 3600), 0, TideExtreme.Kind.LOW)));
    }

    /** Half tide after three hours, running 3 m · π/6 an hour. */
    @Test
    void theWaterHasAHeightAndADirection() {
        Condition height = TideConditions.height(table(), new Range(2, 5));
        assertThat(height.margin(minute(3))).isCloseTo(1, within(1e-6));
        assertThat(height.margin(minute(6))).isCloseTo(-1, within(1e-6));
        assertThat(height.margin(minute(13))).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(height.look(minute(13), height.margin(minute(13)))).isEqualTo(1);
        assertThat(height.words(minute(2.5), minute(3))).isEqualTo("water 2.2 to 3 m");
        assertThat(height.words(minute(5), minute(7))).isEqualTo("water between 5.6 and 6 m");
        assertThat(height.words(minute(6), minute(6))).isEqualTo("water 6 m");
        assertThat(height.words(minute(11), minute(13))).isEqualTo("water not known throughout");
        leaps(height, 900, 260);
        Condition rising = TideConditions.direction(table(), TideSpans.Direction.RISING);
        Condition falling = TideConditions.direction(table(), TideSpans.Direction.FALLING);
        assertThat(rising.margin(minute(3))).isCloseTo(Math.PI / 2, within(1e-6));
        assertThat(falling.margin(minute(3))).isCloseTo(-Math.PI / 2, within(1e-6));
        assertThat(falling.margin(minute(13))).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(falling.look(minute(13), Double.NEGATIVE_INFINITY)).isEqualTo(1);
        assertThat(rising.words(0, 60)).isEqualTo("rising water");
        assertThat(rising.word()).isEqualTo("tideDirection");
        assertThat(rising.unit()).isEqualTo("m/h");
        leaps(rising, 900, 260);
        leaps(falling, 900, 260);
    }

    @Test
    void aDayAtNoonIsLighterThanOneAtDusk() {
        Sky sky = DrawnSky.climbing(270, 20, -0.2);
        Scene scene = DrawnSky.scene(sky, Optional.empty(), Optional.empty(), Optional.empty());
        Condition light = LightCondition.exposureValue100(scene.light(), new Range(9, 11));
        // USNO Circular 171 (REFERENCES 2): EV100 10.83 at 5°, 9.59 at 2°, 13.42 at 20°
        assertThat(light.margin(0)).isCloseTo(-2.42, within(0.1));
        assertThat(light.margin(60 * 75)).isCloseTo(0.17, within(0.15));
        assertThat(light.word()).isEqualTo("ev100");
        leaps(light, 180, 100);
    }

    private static Weather forecast(Object... hourThenKindAndValue) {
        List<Weather.Row> rows = new ArrayList<>();
        for (int k = 0; k < hourThenKindAndValue.length; k += 3) {
            rows.add(new Weather.Row(
                    Instant.EPOCH.plusSeconds(3600L * (int) hourThenKindAndValue[k]),
                    Map.of((Weather.Kind) hourThenKindAndValue[k + 1], (double) hourThenKindAndValue[k + 2])));
        }
        return new Weather(rows);
    }

    /** Straight between rows three hours apart; nothing is said before, after and across more than twelve hours. */
    @Test
    void aForecastRunsStraightFromRowToRow() {
        Weather weather = forecast(
                1,
                Weather.Kind.WIND,
                4.0,
                4,
                Weather.Kind.WIND,
                10.0,
                16,
                Weather.Kind.WIND,
                2.0,
                29,
                Weather.Kind.WIND,
                3.0);
        double[][] known = {{1, 4}, {2.5, 7}, {4, 10}, {10, 6}, {15.7, 2.2}, {29, 3}};
        for (double[] each : known) {
            assertThat(weather.value(Weather.Kind.WIND, minute(each[0]))).isCloseTo(each[1], within(1e-9));
        }
        for (double hour : new double[] {0.9, 16.1, 28, 29.1}) {
            assertThat(weather.value(Weather.Kind.WIND, minute(hour))).isNaN();
        }
        assertThat(weather.value(Weather.Kind.CLOUD, minute(2))).isNaN();
        assertThat(weather.tells(Weather.Kind.WIND)).isTrue();
        assertThat(weather.tells(Weather.Kind.CLOUD)).isFalse();
        // steepest from 4 to 10 m/s in 180 minutes
        assertThat(weather.fastestPerMinute(Weather.Kind.WIND)).isCloseTo(6 / 180.0, within(1e-9));
        assertThat(weather.minutesKnown(minute(0))).isEqualTo(60);
        assertThat(weather.minutesKnown(minute(1))).isEqualTo(180);
        assertThat(weather.minutesKnown(minute(3))).isEqualTo(60);
        assertThat(weather.minutesKnown(minute(30))).isEqualTo(1);
        Condition calm = WeatherConditions.of(weather, Weather.Kind.WIND, new Range(0, 8));
        assertThat(calm.margin(minute(2.5))).isCloseTo(1, within(1e-9));
        assertThat(calm.margin(minute(4))).isCloseTo(-2, within(1e-9));
        assertThat(calm.margin(minute(20))).isZero();
        assertThat(calm.words(minute(2), minute(3))).isEqualTo("wind 7 m/s");
        assertThat(calm.words(minute(20), minute(21))).isEqualTo("wind not forecast");
        assertThat(calm.word()).isEqualTo("windMetresPerSecond");
        assertThat(calm.unit()).isEqualTo("m/s");
        leaps(calm, 31 * 60, 1100);
    }

    /** A direction holds until the next row: half way between north-west and north-east is no south. */
    @Test
    void directionsDoNotRunFromRowToRow() {
        Weather weather = forecast(
                0, Weather.Kind.WIND_FROM, 315.0, 6, Weather.Kind.WIND_FROM, 45.0, 18, Weather.Kind.WIND_FROM, 90.0);
        assertThat(weather.value(Weather.Kind.WIND_FROM, minute(5.9))).isEqualTo(315);
        assertThat(weather.value(Weather.Kind.WIND_FROM, minute(6))).isEqualTo(45);
        assertThat(weather.value(Weather.Kind.WIND_FROM, minute(17))).isEqualTo(45);
        assertThat(weather.value(Weather.Kind.WIND_FROM, minute(18))).isEqualTo(90);
        assertThat(weather.value(Weather.Kind.WIND_FROM, minute(18.1))).isNaN();
        leaps(WeatherConditions.of(weather, Weather.Kind.WIND_FROM, new Range(300, 330)), 32 * 60, 32 * 60);
    }

    /** From 300 over north to 60: 315 and 45 lie 15 within it, 90 lies 30 beyond. */
    @Test
    void aDirectionMayRunOverNorth() {
        Weather weather = forecast(
                0, Weather.Kind.WIND_FROM, 315.0, 6, Weather.Kind.WIND_FROM, 45.0, 12, Weather.Kind.WIND_FROM, 90.0);
        Condition northerly = WeatherConditions.of(weather, Weather.Kind.WIND_FROM, new Range(300, 420));
        assertThat(northerly.margin(minute(1))).isEqualTo(15);
        assertThat(northerly.margin(minute(7))).isEqualTo(15);
        assertThat(northerly.margin(minute(12))).isEqualTo(-30);
    }

    /** Rows a day apart say nothing of the hours between them, but each says what it says of its own instant. */
    @Test
    void aRowIsKnownAtItsOwnInstant() {
        Weather weather = forecast(0, Weather.Kind.WIND, 4.0, 24, Weather.Kind.WIND, 8.0);
        assertThat(weather.value(Weather.Kind.WIND, minute(0))).isEqualTo(4);
        assertThat(weather.value(Weather.Kind.WIND, minute(12))).isNaN();
        assertThat(weather.value(Weather.Kind.WIND, minute(24))).isEqualTo(8);
    }

    @Test
    void aForecastIsCheckedAsItIsRead() {
        assertThatThrownBy(() -> new Weather(List.of())).hasMessageContaining("at least one row");
        assertThatThrownBy(() -> forecast(2, Weather.Kind.WIND, 1.0, 2, Weather.Kind.WIND, 1.0))
                .hasMessageContaining("order of time");
        assertThatThrownBy(() -> forecast(2, Weather.Kind.WIND, -1.0)).hasMessageContaining("windMetresPerSecond");
        assertThatThrownBy(() -> forecast(2, Weather.Kind.CLOUD, 1.1)).hasMessageContaining("cloudCover");
        assertThat(forecast(2, Weather.Kind.CLOUD, 1.0, 3, Weather.Kind.CLOUD, 0.0)
                        .value(Weather.Kind.CLOUD, minute(2.5)))
                .isEqualTo(0.5);
        assertThat(Weather.Kind.SWELL_PERIOD.plainWord()).isEqualTo("swell period");
    }

    /** Circular 171: average cloud takes a third of the light, 1.6 stops, dark stratus leaves a tenth, 3.3 stops. */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.25, 0", "0.375, 0.5", "0.5, 1", "0.875, 1.585", "0.9375, 2.4535", "1, 3.322"})
    void cloudTakesItsStops(double cover, double stops) {
        CloudCover cloud = forecast(0, Weather.Kind.CLOUD, cover, 3, Weather.Kind.CLOUD, cover)
                .cloud(Cloud.THIN);
        assertThat(cloud.stops(minute(1))).isCloseTo(stops, within(1e-3));
        // where nothing is forecast, as thin as was said: one stop
        assertThat(cloud.stops(minute(4))).isCloseTo(1, within(1e-9));
        assertThat(cloud.word()).isEqualTo("as forecast");
        assertThat(cloud.fastestStopsPerMinute()).isGreaterThanOrEqualTo(3.322);
        assertThat(forecast(0, Weather.Kind.WIND, 1.0).cloud(Cloud.THIN)).isEqualTo(Cloud.THIN);
    }

    /** The run-up goes with √(H · T²): 2 m every 8 s run higher than 3 m every 5 s. */
    @Test
    void theSwellThatRunsUpHighestIsFound() {
        List<Weather.Row> rows = List.of(
                new Weather.Row(Instant.EPOCH, Map.of(Weather.Kind.SWELL, 3.0, Weather.Kind.SWELL_PERIOD, 5.0)),
                new Weather.Row(
                        Instant.EPOCH.plusSeconds(3600),
                        Map.of(Weather.Kind.SWELL, 2.0, Weather.Kind.SWELL_PERIOD, 8.0)),
                new Weather.Row(
                        Instant.EPOCH.plusSeconds(7200),
                        Map.of(Weather.Kind.SWELL, 0.0, Weather.Kind.SWELL_PERIOD, 8.0)));
        Weather weather = new Weather(rows);
        Swell swell = weather.highestSwell(0, 7200).orElseThrow();
        assertThat(swell.heightMetres()).isCloseTo(2, within(0.3));
        assertThat(swell.runUpMetres()).isGreaterThanOrEqualTo(new Swell(2, 8).runUpMetres());
        assertThat(weather.highestSwell(0, 0).orElseThrow()).isEqualTo(new Swell(3, 5));
        assertThat(weather.highestSwell(7200, 9000)).isEmpty();
        assertThat(forecast(0, Weather.Kind.SWELL, 1.0).highestSwell(0, 60)).isEmpty();
    }
}
