package ebblight.core.outing;

import ebblight.core.sky.CameraView;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideSpans;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What is wished of the hour at a scene; each {@code with} adds a wish. */
public final class HourWishes {

    private static final int DAY_MINUTES = 1440;

    private final Scene scene;
    private final List<Condition> conditions;
    private final List<String> assumptions;

    private HourWishes(Scene scene, List<Condition> conditions, List<String> assumptions) {
        this.scene = scene;
        this.conditions = List.copyOf(conditions);
        this.assumptions = List.copyOf(assumptions);
    }

    /** No wish yet. */
    public static HourWishes at(Scene scene) {
        return new HourWishes(scene, List.of(), List.of());
    }

    private HourWishes with(Condition condition) {
        List<Condition> more = new ArrayList<>(conditions);
        more.add(condition);
        return new HourWishes(scene, more, assumptions);
    }

    /** The place they are about. */
    public Scene scene() {
        return scene;
    }

    /** The wishes, cheap ones first. */
    List<Condition> conditions() {
        return conditions;
    }

    /** Whether nothing is wished. */
    public boolean isEmpty() {
        return conditions.isEmpty() && assumptions.isEmpty();
    }

    /** What was wished but is not known, and taken as it is wished. */
    public List<String> assumptions() {
        return assumptions;
    }

    /** Minutes of the day on the clock, both included; over midnight when the second is the smaller. */
    public HourWishes withHours(int fromMinute, int toMinute) {
        if (fromMinute < 0 || fromMinute >= DAY_MINUTES || toMinute < 0 || toMinute > DAY_MINUTES) {
            throw new IllegalArgumentException("hours lie between 00:00 and 24:00");
        }
        return with(ClockConditions.hours(scene.clock(), fromMinute, Math.min(toMinute, DAY_MINUTES - 1)));
    }

    /** Days of the week, Monday 0 to Sunday 6. */
    public HourWishes withDays(Set<Integer> days) {
        if (days.isEmpty()) {
            throw new IllegalArgumentException("name at least one day of the week");
        }
        return with(ClockConditions.days(scene.clock(), days));
    }

    /** Altitude of the sun as it is seen, in degrees. */
    public HourWishes withSunAltitude(Range degrees) {
        return with(SkyConditions.sunAltitude(scene.sky(), degrees));
    }

    /** Parts of the day. */
    public HourWishes withTwilight(Set<Twilight> kinds) {
        return with(new TwilightCondition(scene.sky(), kinds));
    }

    /** Bearing of the sun against the view, −180 to 180 degrees, positive to the right. */
    public HourWishes withSunBearing(Range degrees) {
        if (degrees.low() < -180 || degrees.high() > 180) {
            throw new IllegalArgumentException("bearings against the view lie between -180 and 180 degrees, were "
                    + degrees.low() + " to " + degrees.high());
        }
        return with(SkyConditions.sunBearing(scene.sky(), view("sunBearing"), degrees));
    }

    /** Whether part of the sun shall be in the picture and over the skyline. */
    public HourWishes withSunInFrame(boolean wanted) {
        return with(SkyConditions.sunInFrame(scene.sky(), view("sunInFrame"), scene.skylineDegrees(), wanted));
    }

    /** Whether part of the moon shall be in the picture and over the skyline. */
    public HourWishes withMoonInFrame(boolean wanted) {
        return with(SkyConditions.moonInFrame(scene.sky(), view("moonInFrame"), scene.skylineDegrees(), wanted));
    }

    private CameraView view(String wish) {
        return scene.view().orElseThrow(() -> new IllegalArgumentException(wish + " needs a view"));
    }

    /** Altitude of the moon as it is seen, in degrees. */
    public HourWishes withMoonAltitude(Range degrees) {
        return with(SkyConditions.moonAltitude(scene.sky(), degrees));
    }

    /** Lit share of the moon, 0 to 1. */
    public HourWishes withMoonFraction(Range fraction) {
        return with(SkyConditions.moonFraction(scene.sky(), fraction));
    }

    /** Height of the water in metres above the datum of the tide. */
    public HourWishes withTideMetres(Range metres) {
        return with(TideConditions.height(tide("tideMetres"), metres));
    }

    /** Which way the water shall run. */
    public HourWishes withTideDirection(TideSpans.Direction direction) {
        return direction == TideSpans.Direction.ANY
                ? this
                : with(TideConditions.direction(tide("tideDirection"), direction));
    }

    private TideCurve tide(String wish) {
        return scene.tide()
                .orElseThrow(() ->
                        new IllegalArgumentException(wish + " needs a tide: name a station or give a table of waters"));
    }

    /** Exposure value at ISO 100 of the light on level ground. */
    public HourWishes withExposureValue100(Range exposureValue) {
        return with(LightCondition.exposureValue100(scene.light(), exposureValue));
    }

    /** What a forecast shall say; taken as wished where there is none. */
    public HourWishes withWeather(Weather.Kind kind, Range range) {
        Optional<Weather> weather = scene.weather();
        if (weather.isPresent() && weather.get().tells(kind)) {
            return with(WeatherConditions.of(weather.get(), kind, range));
        }
        List<String> more = new ArrayList<>(assumptions);
        more.add(kind.word() + " is not known and was taken to be as wished; look at a forecast before you go");
        return new HourWishes(scene, conditions, more);
    }
}
