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
    private final List<Weather.Kind> unknown;

    private HourWishes(Scene scene, List<Condition> conditions, List<Weather.Kind> unknown) {
        this.scene = scene;
        this.conditions = List.copyOf(conditions);
        this.unknown = List.copyOf(unknown);
    }

    /** No wish yet. */
    public static HourWishes at(Scene scene) {
        return new HourWishes(scene, List.of(), List.of());
    }

    private HourWishes with(Condition condition) {
        List<Condition> more = new ArrayList<>(conditions);
        more.add(condition);
        return new HourWishes(scene, more, unknown);
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
        return conditions.isEmpty() && unknown.isEmpty();
    }

    /** What was wished but is not known, and taken as it is wished. */
    public List<String> assumptions() {
        return unknown.stream()
                .map(kind -> kind.plainWord()
                        + " is not known and was taken to be as wished; look at a forecast before you go")
                .toList();
    }

    /** The same for the reasons of a window: "swell not known". */
    List<String> unknownWords() {
        return unknown.stream().map(kind -> kind.plainWord() + " not known").toList();
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
        return with(SkyConditions.sunBearing(scene.sky(), view(), degrees));
    }

    /** Whether part of the sun shall be in the picture and over the skyline. */
    public HourWishes withSunInFrame(boolean wanted) {
        return with(SkyConditions.sunInFrame(scene.sky(), view(), scene.skylineDegrees(), wanted));
    }

    /** Whether part of the moon shall be in the picture and over the skyline. */
    public HourWishes withMoonInFrame(boolean wanted) {
        return with(SkyConditions.moonInFrame(scene.sky(), view(), scene.skylineDegrees(), wanted));
    }

    private CameraView view() {
        return scene.view()
                .orElseThrow(
                        () -> new IllegalArgumentException("needs a view: where the lens looks, and its focal length"));
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
        return with(TideConditions.height(tide(), metres));
    }

    /** Which way the water shall run. */
    public HourWishes withTideDirection(TideSpans.Direction direction) {
        return direction == TideSpans.Direction.ANY ? this : with(TideConditions.direction(tide(), direction));
    }

    private TideCurve tide() {
        return scene.tide()
                .orElseThrow(
                        () -> new IllegalArgumentException("needs a tide: name a station or give a table of waters"));
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
        List<Weather.Kind> more = new ArrayList<>(unknown);
        more.add(kind);
        return new HourWishes(scene, conditions, more);
    }
}
