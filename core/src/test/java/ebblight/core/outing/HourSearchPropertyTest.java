package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.light.Cloud;
import ebblight.core.light.LightModel;
import ebblight.core.numeric.Epoch;
import ebblight.core.numeric.Work;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.MoonPhase;
import ebblight.core.sky.Place;
import ebblight.core.sky.Sky;
import ebblight.core.sky.TabulatedEphemeris;
import ebblight.core.tide.Station;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideSpans;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.DoublePredicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search leaps from minute to minute; looking at every minute must find the same windows. */
class HourSearchPropertyTest {

    private static final int WISHES = 50;
    private static final int DAYS = 21;

    /** A wish twice: as the search takes it, and as its definition reads. */
    private static final class Twice {

        private final Random random;
        private final Scene scene;
        private final ZoneId zone;
        private final List<DoublePredicate> plain = new ArrayList<>();
        private HourWishes wishes;

        Twice(Random random, Scene scene, ZoneId zone) {
            this.random = random;
            this.scene = scene;
            this.zone = zone;
            wishes = HourWishes.at(scene);
        }

        private Range range(double low, double high) {
            double a = low + (high - low) * random.nextDouble();
            double b = low + (high - low) * random.nextDouble();
            return new Range(Math.min(a, b), Math.max(a, b));
        }

        private static boolean in(Range range, double value) {
            return value >= range.low() && value <= range.high();
        }

        private LocalDateTime local(double seconds) {
            return Epoch.instant(seconds).atZone(zone).toLocalDateTime();
        }

        void add(int kind) {
            Sky sky = scene.sky();
            switch (kind) {
                case 0 -> {
                    Range range = range(-20, 40);
                    wishes = wishes.withSunAltitude(range);
                    plain.add(t -> in(range, sky.sun(t).apparentAltitudeDegrees()));
                }
                case 1 -> {
                    Range range = range(-20, 50);
                    wishes = wishes.withMoonAltitude(range);
                    plain.add(t -> in(range, sky.moon(t).apparentAltitudeDegrees()));
                }
                case 2 -> {
                    Range range = range(0, 1);
                    wishes = wishes.withMoonFraction(range);
                    plain.add(t -> in(
                            new Range(100 * range.low(), 100 * range.high()),
                            100 * MoonPhase.at(sky.ephemeris(), t).fraction()));
                }
                case 3 -> {
                    Range range = range(-3, 3);
                    TideCurve tide = scene.tide().orElseThrow();
                    wishes = wishes.withTideMetres(range);
                    plain.add(t -> in(range, tide.heightMetres(t)));
                }
                case 4 -> {
                    boolean rising = random.nextBoolean();
                    TideCurve tide = scene.tide().orElseThrow();
                    wishes =
                            wishes.withTideDirection(rising ? TideSpans.Direction.RISING : TideSpans.Direction.FALLING);
                    plain.add(t -> rising ? tide.risingMetresPerHour(t) >= 0 : tide.risingMetresPerHour(t) <= 0);
                }
                case 5 -> {
                    Range range = range(-4, 15);
                    wishes = wishes.withExposureValue100(range);
                    plain.add(t -> in(range, scene.light().exposureValue100(t)));
                }
                case 6 -> {
                    int from = random.nextInt(1440);
                    int to = random.nextInt(1440);
                    wishes = wishes.withHours(from, to);
                    plain.add(t -> {
                        int minute = 60 * local(t).getHour() + local(t).getMinute();
                        return from <= to ? minute >= from && minute <= to : minute >= from || minute <= to;
                    });
                }
                case 7 -> {
                    Set<Integer> days = Set.of(random.nextInt(5), 5);
                    wishes = wishes.withDays(days);
                    plain.add(t -> days.contains(local(t).getDayOfWeek().getValue() - 1));
                }
                case 8 -> {
                    boolean wanted = random.nextInt(4) == 0;
                    wishes = wishes.withSunInFrame(wanted);
                    plain.add(t -> wanted == sunInFrame(t));
                }
                case 9 -> {
                    Range range = range(-180, 180);
                    wishes = wishes.withSunBearing(range);
                    plain.add(t -> {
                        double turn = sky.sun(t).azimuthDegrees()
                                - scene.view().orElseThrow().azimuthDegrees();
                        return in(range, turn - 360 * Math.floor((turn + 180) / 360));
                    });
                }
                default -> {
                    wishes = wishes.withTwilight(Set.of(Twilight.CIVIL, Twilight.NAUTICAL));
                    plain.add(t -> in(new Range(-12, -50 / 60.0), sky.sun(t).altitudeDegrees()));
                }
            }
        }

        /** Some of the disc above the skyline and inside the frame. */
        private boolean sunInFrame(double t) {
            var sun = scene.sky().sun(t);
            double radius = Sky.semidiameterDegrees(Sky.SUN_KILOMETRES, sun.kilometres());
            double altitude = sun.apparentAltitudeDegrees();
            CameraView view = scene.view().orElseThrow();
            return altitude + radius > scene.skylineDegrees()
                    && view.outsideDegrees(sun.azimuthDegrees(), altitude) < radius;
        }

        /** Every minute, one after the other. */
        List<String> everyMinute(long first, long end, int least) {
            List<String> runs = new ArrayList<>();
            long open = -1;
            for (long minute = first; minute <= end; minute++) {
                double t = 60.0 * minute;
                boolean holds = minute < end && plain.stream().allMatch(p -> p.test(t));
                if (holds && open < 0) {
                    open = minute;
                }
                if (!holds && open >= 0) {
                    if (minute - open >= least) {
                        runs.add(Instant.ofEpochSecond(60 * open) + " " + Instant.ofEpochSecond(60 * (minute - 1)));
                    }
                    open = -1;
                }
            }
            return runs;
        }
    }

    private static Scene scene(Place place, ZoneId zone, Instant from, Instant to, Random random) {
        double start = Epoch.seconds(from);
        double end = Epoch.seconds(to);
        Sky sky = new Sky(place, new TabulatedEphemeris(start - 86_400, end + 86_400));
        Station station = new Station(
                "x",
                "made up",
                "",
                place,
                "MSL",
                0.4,
                List.of(
                        new Station.Harmonic("M2", 2.1, 120),
                        new Station.Harmonic("S2", 0.7, 160),
                        new Station.Harmonic("K1", 0.3, 20),
                        new Station.Harmonic("M4", 0.2, 300)),
                "",
                "");
        List<LocalTime.Step> steps = new ArrayList<>();
        steps.add(new LocalTime.Step(from, zone.getRules().getOffset(from)));
        for (var next = zone.getRules().nextTransition(from);
                next != null && next.getInstant().isBefore(to);
                next = zone.getRules().nextTransition(next.getInstant())) {
            steps.add(new LocalTime.Step(next.getInstant(), next.getOffsetAfter()));
        }
        return new Scene(
                sky,
                LightModel.of(sky, Cloud.CLEAR),
                new LocalTime(steps),
                Optional.of(station.curve(start - 86_400, end + 86_400)),
                Optional.of(new CameraView(360 * random.nextDouble(), 5, 24, 36, 24)),
                random.nextInt(3),
                Optional.empty());
    }

    /** Mid latitudes over both changes of the clock, polar day and night, the tropics, and the date line. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void leapingFindsWhatLookingAtEveryMinuteFinds(long seed) {
        Random random = new Random(seed);
        Object[][] places = {
            {Place.of(48.6, -2.0), "Europe/Paris", "2027-03-14T00:00:00Z"},
            {Place.of(63.4, -19.05), "Atlantic/Reykjavik", "2027-01-01T00:00:00Z"},
            {Place.of(78.2, 15.6), "Arctic/Longyearbyen", "2027-08-15T00:00:00Z"},
            {Place.of(1.3, 103.8), "Asia/Singapore", "2027-06-01T00:00:00Z"},
            {Place.of(-16.8, 179.99), "Pacific/Fiji", "2027-10-20T00:00:00Z"}
        };
        int found = 0;
        for (int k = 0; k < WISHES; k++) {
            Object[] where = places[k % places.length];
            ZoneId zone = ZoneId.of((String) where[1]);
            Instant from = Instant.parse((String) where[2]).plusSeconds(random.nextInt(5 * 86_400));
            Instant to = from.plusSeconds(DAYS * 86_400L);
            Twice twice = new Twice(random, scene((Place) where[0], zone, from, to, random), zone);
            int count = 1 + random.nextInt(4);
            for (int i = 0; i < count; i++) {
                twice.add(random.nextInt(11));
            }
            int least = random.nextBoolean() ? 1 : 1 + random.nextInt(60);
            long first = (long) Math.ceil(Epoch.seconds(from) / 60);
            long end = (long) Math.ceil(Epoch.seconds(to) / 60);
            List<String> windows = HourFinder.find(twice.wishes, from, to, least, Work.alone()).windows().stream()
                    .map(w -> w.start() + " " + w.end())
                    .toList();
            assertThat(windows).as("wish " + k).isEqualTo(twice.everyMinute(first, end, least));
            found += windows.size();
        }
        // a comparison of empty lists would prove nothing
        assertThat(found).isGreaterThan(WISHES);
    }
}
