package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import ebblight.core.sky.CameraView;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideExtreme;
import ebblight.core.tide.TideSpans;
import ebblight.core.tide.TideTable;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The search for the hour under a sky and by a water that can be worked by hand; hours count from 1970. */
class HourFinderTest {

    private static final TideTable SIX_METRES = new TideTable(List.of(
            new TideExtreme(Instant.EPOCH, 0, TideExtreme.Kind.LOW),
            new TideExtreme(Instant.EPOCH.plusSeconds(6 * 3600), 6, TideExtreme.Kind.HIGH),
            new TideExtreme(Instant.EPOCH.plusSeconds(12 * 3600), 0, TideExtreme.Kind.LOW)));

    private static Scene scene(Optional<TideCurve> tide) {
        Weather windOnly = new Weather(List.of(
                new Weather.Row(Instant.EPOCH, Map.of(Weather.Kind.WIND, 2.0)),
                new Weather.Row(Instant.EPOCH.plusSeconds(12 * 3600), Map.of(Weather.Kind.WIND, 14.0))));
        return DrawnSky.scene(
                DrawnSky.climbing(270, 20, -0.1),
                tide,
                Optional.of(new CameraView(270, 0, 24, 36, 24)),
                Optional.of(windOnly));
    }

    private static HourWishes wishes() {
        return HourWishes.at(scene(Optional.of(SIX_METRES)));
    }

    private static Instant hour(double hour) {
        return Instant.EPOCH.plusSeconds(Math.round(3600 * hour));
    }

    private static HourAnswer find(HourWishes wishes, double from, double to, int least) {
        return HourFinder.find(wishes, hour(from), hour(to), least, Work.alone());
    }

    /** Half tide at 3 and 9 h, high water at 6: at 3 m or more from 3:00 to 9:00, both minutes included. */
    @Test
    void aWindowRunsFromItsFirstMinuteToItsLast() {
        HourAnswer answer = find(wishes().withTideMetres(new Range(3 - 1e-9, 9)), 0, 12, 1);
        assertThat(answer.shortfalls()).isEmpty();
        assertThat(answer.windows()).hasSize(1);
        HourWindow window = answer.windows().get(0);
        assertThat(window.start()).isEqualTo(hour(3));
        assertThat(window.end()).isEqualTo(hour(9));
        assertThat(window.minutes()).isEqualTo(361);
        assertThat(window.why()).containsExactly("water between 3 and 6 m");
        assertThat(window.water()).isEqualTo(HourWindow.Water.TURNING);
        assertThat(find(wishes().withTideMetres(new Range(3 - 1e-9, 9)), 0, 12, 361)
                        .windows())
                .hasSize(1);
        assertThat(find(wishes().withTideMetres(new Range(3 - 1e-9, 9)), 0, 12, 362)
                        .windows())
                .isEmpty();
    }

    @Test
    void theWaterOfAWindowRunsOneWayOrTurns() {
        HourWishes hours = wishes().withHours(60, 120);
        assertThat(find(hours, 0, 12, 1).windows().get(0).water()).isEqualTo(HourWindow.Water.RISING);
        assertThat(find(wishes().withHours(8 * 60, 9 * 60), 0, 12, 1)
                        .windows()
                        .get(0)
                        .water())
                .isEqualTo(HourWindow.Water.FALLING);
        assertThat(find(wishes().withHours(11 * 60, 13 * 60), 0, 24, 1)
                        .windows()
                        .get(0)
                        .water())
                .isEqualTo(HourWindow.Water.UNKNOWN);
        HourWishes inland = HourWishes.at(scene(Optional.empty())).withHours(60, 120);
        assertThat(find(inland, 0, 12, 1).windows().get(0).water()).isEqualTo(HourWindow.Water.UNKNOWN);
        assertThat(List.of(HourWindow.Water.values()))
                .extracting(HourWindow.Water::word)
                .containsExactly("falling", "turning", "rising", "unknown");
    }

    /** From 00:00:30 on the first whole minute is 00:01; the last before 02:00 is 01:59. */
    @Test
    void onlyWholeMinutesOfTheSpanCount() {
        HourAnswer answer =
                HourFinder.find(wishes().withHours(0, 1439), Instant.EPOCH.plusSeconds(30), hour(2), 1, Work.alone());
        assertThat(answer.windows().get(0).start()).isEqualTo(Instant.EPOCH.plusSeconds(60));
        assertThat(answer.windows().get(0).end()).isEqualTo(hour(2).minusSeconds(60));
    }

    /** From 1:00 to 2:00 and water of 5 m and more (from 4:23.6 on: cos⁻¹(−2/3)/30°): short by 5 m less that of 2:00, 1.5 m. */
    @Test
    void whenNothingHoldsEveryWishSaysByHowMuch() {
        HourWishes wishes = wishes().withHours(60, 120).withTideMetres(new Range(5, 9));
        HourAnswer answer = find(wishes, 0, 12, 1);
        assertThat(answer.windows()).isEmpty();
        assertThat(answer.shortfalls()).hasSize(2);
        Shortfall hours = answer.shortfalls().get(0);
        Shortfall water = answer.shortfalls().get(1);
        // the hours hold 61 of 720 minutes, the water from minute 264 to 456: 193
        assertThat(hours.word()).isEqualTo("hours");
        assertThat(hours.failsMinutes()).isEqualTo(720 - 61);
        assertThat(hours.ofMinutes()).isEqualTo(720);
        assertThat(hours.windowsWithout()).isEqualTo(1);
        assertThat(hours.shortBy().orElseThrow()).isEqualTo(264 - 120);
        assertThat(hours.unit()).isEqualTo("min");
        assertThat(water.word()).isEqualTo("tideMetres");
        assertThat(water.failsMinutes()).isEqualTo(720 - 193);
        assertThat(water.shortBy().orElseThrow()).isCloseTo(5 - 1.5, within(1e-6));
        // and for half an hour the water must be relaxed to that of 1:31
        Shortfall longer = find(wishes, 0, 12, 30).shortfalls().get(1);
        assertThat(longer.shortBy().orElseThrow()).isCloseTo(5 - (3 - 3 * Math.cos(Math.PI * 91 / 360)), within(1e-6));
    }

    /** Water that never stands at 7 m: short by a metre, even where the other wishes leave no window either. */
    @Test
    void aWishThatNeverHoldsIsMeasuredAlone() {
        HourWishes wishes = wishes().withTideMetres(new Range(7, 9))
                .withHours(60, 120)
                .withTideDirection(TideSpans.Direction.FALLING);
        Shortfall water = find(wishes, 0, 12, 1).shortfalls().get(0);
        assertThat(water.word()).isEqualTo("tideMetres");
        assertThat(water.windowsWithout()).isZero();
        assertThat(water.shortBy().orElseThrow()).isCloseTo(1, within(1e-6));
        Shortfall hours = find(wishes, 0, 12, 1).shortfalls().get(1);
        assertThat(hours.shortBy()).isEmpty();
    }

    /** Four hours later than the search above: the counts are of the span alone, the wish that fails most comes first. */
    @Test
    void shortfallsCountTheSpanThatWasAskedFor() {
        HourWishes wishes = wishes().withTideMetres(new Range(5, 9)).withHours(9 * 60, 10 * 60);
        HourAnswer answer = find(wishes, 4, 12, 1);
        assertThat(answer.windows()).isEmpty();
        // of 480 minutes the water holds at 264 to 456, the hours at 540 to 600
        assertThat(answer.shortfalls()).extracting(Shortfall::word).containsExactly("hours", "tideMetres");
        assertThat(answer.shortfalls()).extracting(Shortfall::failsMinutes).containsExactly(480L - 61, 480L - 193);
        assertThat(answer.shortfalls()).extracting(Shortfall::ofMinutes).containsOnly(480L);
        assertThat(answer.shortfalls().get(0).shortBy().orElseThrow()).isEqualTo(540 - 456);
    }

    /** A wish that must be looked at every minute, over a week. */
    @Test
    void longSearchesTellHowFarTheyAreAndCanBeStopped() {
        Condition everyMinute = new Condition() {
            @Override
            public String word() {
                return "never";
            }

            @Override
            public String unit() {
                return "";
            }

            @Override
            public double margin(double seconds) {
                return -1;
            }

            @Override
            public int look(double seconds, double margin) {
                return 1;
            }

            @Override
            public String words(double start, double end) {
                return "";
            }
        };
        List<Double> told = new ArrayList<>();
        boolean[] stop = new boolean[1];
        Work work = new Work() {
            @Override
            public boolean cancelled() {
                return stop[0];
            }

            @Override
            public void progress(double fraction, String stage) {
                told.add(fraction);
            }

            @Override
            public void forEach(int n, IntConsumer body) {
                Work.alone().forEach(n, body);
            }
        };
        HourSearch week = new HourSearch(List.of(everyMinute), 5000, 5000 + 7 * 1440, work);
        assertThat(week.runs(1)).isEmpty();
        assertThat(told).hasSizeBetween(1, 100).isSorted();
        double between = told.get(1) - told.get(0);
        assertThat(told.get(0)).isCloseTo(between, within(1e-9)); // from nought in even steps
        assertThat(told.get(told.size() - 1)).isBetween(1 - between, 1.0);
        stop[0] = true;
        assertThatThrownBy(() -> week.runs(1)).isInstanceOf(Work.Cancelled.class);
    }

    @Property(tries = 100)
    void theLeastOfTheWorstIsThatOfEveryStretch(
            @ForAll @Size(min = 1, max = 30) List<@DoubleRange(max = 10) Double> values,
            @ForAll @IntRange(min = 1, max = 8) int length) {
        double least = Double.POSITIVE_INFINITY;
        for (int from = 0; from + length <= values.size(); from++) {
            double worst = 0;
            for (double value : values.subList(from, from + length)) {
                worst = Math.max(worst, value);
            }
            least = Math.min(least, worst);
        }
        double[] plain = values.stream().mapToDouble(Double::doubleValue).toArray();
        assertThat(HourFinder.leastOfWorst(plain, length)).isEqualTo(least);
    }

    @Test
    void aSearchIsCheckedBeforeItRuns() {
        HourWishes wishes = wishes().withHours(0, 60);
        assertThatThrownBy(() -> find(wishes(), 0, 12, 1)).hasMessageContaining("nothing is wished");
        assertThatThrownBy(() -> find(wishes, 12, 12, 1)).hasMessageContaining("earlier to a later");
        assertThatThrownBy(() -> find(wishes, 0, 12 * 366 * 24, 1)).hasMessageContaining("eleven years");
        assertThatThrownBy(() -> find(wishes, 0, 12, 0)).hasMessageContaining("at least 1 minute");
    }

    @Test
    void aWishIsCheckedAsItIsMade() {
        HourWishes none = wishes();
        assertThatThrownBy(() -> none.withHours(-1, 60)).hasMessageContaining("00:00 and 24:00");
        assertThatThrownBy(() -> none.withHours(1440, 60)).hasMessageContaining("00:00 and 24:00");
        assertThatThrownBy(() -> none.withHours(60, -1)).hasMessageContaining("00:00 and 24:00");
        assertThatThrownBy(() -> none.withHours(60, 1441)).hasMessageContaining("00:00 and 24:00");
        assertThat(find(none.withHours(0, 1440), 0, 24, 1).windows().get(0).minutes())
                .isEqualTo(1440);
        assertThatThrownBy(() -> none.withDays(Set.of())).hasMessageContaining("at least one day");
        assertThatThrownBy(() -> none.withSunBearing(new Range(-181, 0))).hasMessageContaining("-180 and 180");
        assertThatThrownBy(() -> none.withSunBearing(new Range(0, 181))).hasMessageContaining("-180 and 180");
        HourWishes bare = HourWishes.at(
                DrawnSky.scene(DrawnSky.climbing(270, 20, 0), Optional.empty(), Optional.empty(), Optional.empty()));
        assertThatThrownBy(() -> bare.withSunInFrame(true)).hasMessageContaining("needs a view");
        assertThatThrownBy(() -> bare.withTideMetres(new Range(0, 1))).hasMessageContaining("needs a tide");
        assertThat(none.withTideDirection(TideSpans.Direction.ANY).isEmpty()).isTrue();
        Scene scene = none.scene();
        assertThatThrownBy(() -> new Scene(
                        scene.sky(), scene.light(), scene.clock(), scene.tide(), scene.view(), 90, scene.weather()))
                .hasMessageContaining("skyline");
        assertThatThrownBy(() -> new Scene(
                        scene.sky(), scene.light(), scene.clock(), scene.tide(), scene.view(), -1, scene.weather()))
                .hasMessageContaining("skyline");
    }

    /** What no forecast tells is taken as it is wished, and said so; wind is forecast from 2 to 14 m/s in twelve hours. */
    @Test
    void whatIsNotForecastIsTakenAsWished() {
        HourWishes wishes = wishes().withWeather(Weather.Kind.WIND, new Range(0, 8))
                .withWeather(Weather.Kind.SWELL, new Range(0, 1));
        HourWindow window = find(wishes, 0, 12, 1).windows().get(0);
        assertThat(window.end()).isEqualTo(hour(6));
        assertThat(window.why()).containsExactly("wind 5 m/s", "swell not known");
        assertThat(wishes.assumptions()).hasSize(1).first().asString().contains("swell is not known", "forecast");
        HourWishes swellOnly = wishes().withWeather(Weather.Kind.SWELL, new Range(0, 1));
        assertThat(swellOnly.isEmpty()).isFalse();
        assertThat(find(swellOnly, 0, 12, 1).windows()).hasSize(1);
    }

    /** Under this sky the sun sinks from 20° by 6° an hour: 5° at 2:30; the moon stands opposite, its parallax of a degree is ten minutes. */
    @Test
    void everyWishOfTheSkyReachesTheSearch() {
        Map<HourWishes, double[]> expected = Map.of(
                wishes().withSunAltitude(new Range(8, 14)), new double[] {1, 2},
                wishes().withMoonAltitude(new Range(-14, -8)), new double[] {1, 2},
                wishes().withTwilight(Set.of(Twilight.NAUTICAL)), new double[] {4 + 20 / 60.0, 5 + 20 / 60.0},
                wishes().withSunBearing(new Range(-10, 10)), new double[] {0, 12},
                wishes().withMoonFraction(new Range(0.99, 1)), new double[] {0, 12});
        expected.forEach((wishes, hours) -> {
            HourAnswer answer = find(wishes, 0, 12, 1);
            assertThat(answer.windows()).hasSize(1);
            assertThat(answer.windows().get(0).start().getEpochSecond() / 3600.0)
                    .isCloseTo(hours[0], within(0.2));
            assertThat(answer.windows().get(0).end().getEpochSecond() / 3600.0).isCloseTo(hours[1], within(0.2));
        });
        // in the picture while under 26.6° and above the horizon; the moon in the east never
        assertThat(find(wishes().withSunInFrame(true), 0, 12, 1).windows()).hasSize(1);
        assertThat(find(wishes().withMoonInFrame(true), 0, 2, 1).windows()).isEmpty();
        assertThat(find(wishes().withDays(Set.of(3)), 0, 12, 1).windows()).hasSize(1);
        assertThat(find(wishes().withDays(Set.of(4)), 0, 12, 1).windows()).isEmpty();
        // 10.83 at 5° (USNO Circular 171, REFERENCES 2)
        HourWindow light = find(wishes().withExposureValue100(new Range(10.83, 20)), 0, 12, 1)
                .windows()
                .get(0);
        assertThat(light.end().getEpochSecond() / 3600.0).isCloseTo(2.5, within(0.1));
    }
}
