package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.Numbers;
import ebblight.core.light.Cloud;
import ebblight.core.light.LightModel;
import ebblight.core.numeric.Epoch;
import ebblight.core.numeric.Work;
import ebblight.core.outing.HourAnswer;
import ebblight.core.outing.HourFinder;
import ebblight.core.outing.HourWindow;
import ebblight.core.outing.HourWishes;
import ebblight.core.outing.Scene;
import ebblight.core.outing.Shortfall;
import ebblight.core.outing.Weather;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Ephemeris;
import ebblight.core.sky.Place;
import ebblight.core.sky.Sky;
import ebblight.core.sky.TabulatedEphemeris;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.WaterGuard;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Answers {@code when/1}: the windows in which all wishes hold, why, how many frames fit, and what to pack; when there
 * are none, which wish keeps them away.
 */
final class WhenAnswerer implements Engine.Answerer {

    private static final double DAY_SECONDS = 86_400;
    private static final double LONGEST_SECONDS = 11 * 366 * DAY_SECONDS;
    private static final int SET_UP_MINUTES = 20;
    private static final String SUN_CAUTION =
            "Never look at the sun through an optical finder; neutral-density filters" + " are not solar filters.";
    private static final String NIGHT_CAUTION =
            "Night, cliffs, ice and private ground: tell someone where you are, and obey local rules.";

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields fields = new Fields(json, "");
        HourFields.checkNames(json.keySet());
        Place place = PlaceFields.place(fields);
        double from = Epoch.seconds(Instants.read(fields, "from"));
        double to = Epoch.seconds(Instants.read(fields, "to"));
        if (!(to > from && to - from <= LONGEST_SECONDS)) {
            throw new RequestException(
                    "to",
                    "must come after from, at most eleven years later; the day named in to is" + " no longer searched");
        }
        Optional<TideFields> tide =
                TideFields.given(fields) ? Optional.of(TideFields.read(fields, from, to)) : Optional.empty();
        Scene scene = scene(fields, place, from, to, tide.map(TideFields::curve));
        if (fields.has("guard") && tide.isEmpty()) {
            throw new RequestException(fields.path("guard"), "needs a tide: name a station or give a table of waters");
        }
        HourWishes wishes = HourFields.read(fields, scene);
        if (wishes.isEmpty()) {
            throw new RequestException("wishes", "nothing is wished: name at least one wish, such as sunAltitude");
        }
        int least = fields.whole("minMinutes", 1);
        if (least < 1) {
            throw new RequestException("minMinutes", "must be at least 1, was " + least);
        }
        HourAnswer found = HourFinder.find(wishes, Epoch.instant(from), Epoch.instant(to), least, work);

        JsonObject answer = new JsonObject();
        answer.put("at", place.latitudeDegrees() + "," + place.longitudeDegrees());
        answer.put("from", Instants.write(Epoch.instant(from)));
        answer.put("to", Instants.write(Epoch.instant(to)));
        JsonArray warnings = new JsonArray();
        tide.ifPresent(t -> {
            TideAnswerer.putStation(answer, fields, t.station(), warnings);
            TideAnswerer.warnOfEnds(t.curve(), from, to, warnings);
        });
        Optional<FrameFields> frames = FrameFields.read(fields);
        answer.put("windows", windows(fields, scene, found.windows(), frames));
        putNone(answer, found);
        if (fields.has("kit") && frames.isPresent()) {
            answer.put("packing", PackingAnswer.of(fields.part("kit"), frames.get(), scene.light(), found.windows()));
        }
        if (fields.has("guess")) {
            answer.put("guess", GuessAnswerer.of(fields.part("guess"), scene.view()));
        }
        answer.put("assumed", assumed(fields, scene, wishes));
        answer.put("warnings", warnings);
        answer.put("cautions", cautions(tide.isPresent()));
        return answer;
    }

    private static Scene scene(Fields fields, Place place, double from, double to, Optional<TideCurve> tide) {
        Sky sky = new Sky(place, new TabulatedEphemeris(from - DAY_SECONDS, to + DAY_SECONDS));
        LightModel exact = LightFields.model(fields, new Sky(place, Ephemeris.computed()));
        LightModel light = new LightModel(sky, exact.cloud(), exact.offsetStops(), exact.metered());
        Optional<Weather> weather = HourFields.weather(fields);
        Optional<CameraView> view = PlaceFields.view(fields);
        double skyline = fields.number("skylineDegrees", 0);
        return Checked.of(
                fields.path("skylineDegrees"),
                () -> new Scene(sky, light, HourFields.clock(fields), tide, view, skyline, weather));
    }

    private static JsonArray windows(
            Fields fields, Scene scene, List<HourWindow> windows, Optional<FrameFields> frames) {
        int setUp = fields.whole("setUpMinutes", SET_UP_MINUTES);
        if (setUp < 0 || setUp > 1440) {
            throw new RequestException(fields.path("setUpMinutes"), "lies between 0 and 1440, was " + setUp);
        }
        List<HourWindow> ranked = new ArrayList<>(windows);
        Map<HourWindow, Optional<WaterGuard>> guards = new HashMap<>();
        Set<HourWindow> cutOff = new HashSet<>();
        for (HourWindow window : windows) {
            Optional<WaterGuard> guard = guard(fields, scene, window);
            guards.put(window, guard);
            if (cutOff(guard, window)) {
                cutOff.add(window);
            }
        }
        ranked.sort(Comparator.comparing((HourWindow w) -> cutOff.contains(w))
                .thenComparing(HourWindow::water)
                .thenComparing(HourWindow::start));
        JsonArray rows = new JsonArray();
        for (HourWindow window : windows) {
            double start = Epoch.seconds(window.start());
            double end = Epoch.seconds(window.end());
            JsonObject row = new JsonObject();
            row.put("start", Instants.write(window.start()));
            row.put("end", Instants.write(window.end()));
            row.put("minutes", window.minutes());
            JsonArray why = new JsonArray();
            why.addAll(window.why());
            row.put("why", why);
            row.put("water", window.water().word());
            row.put("rank", ranked.indexOf(window) + 1);
            row.put("atTripodBy", Instants.write(Epoch.instant(start - 60.0 * setUp)));
            row.put("frames", frames.map(f -> f.fit(end - start)).orElse(null));
            row.put(
                    "ev100",
                    ends(scene.light().exposureValue100(start), scene.light().exposureValue100(end)));
            row.put(
                    "sunAltitude",
                    ends(
                            scene.sky().sun(start).apparentAltitudeDegrees(),
                            scene.sky().sun(end).apparentAltitudeDegrees()));
            row.put(
                    "tideMetres",
                    scene.tide()
                            .filter(t -> t.knows(start) && t.knows(end))
                            .map(t -> ends(t.heightMetres(start), t.heightMetres(end)))
                            .orElse(null));
            guards.getOrDefault(window, Optional.empty()).ifPresent(g -> row.put("guard", leaveBy(g, start, frames)));
            rows.add(row);
        }
        return rows;
    }

    /** The guard of a window, its margin no smaller than the swell forecast for the twelve hours from its start runs up. */
    private static Optional<WaterGuard> guard(Fields fields, Scene scene, HourWindow window) {
        double start = Epoch.seconds(window.start());
        return scene.tide()
                .filter(t -> fields.has("guard"))
                .map(t -> GuardAnswer.guard(
                        fields.part("guard"), t, scene.weather().flatMap(w -> w.highestSwell(start, start + 43_200))));
    }

    /** Whether the water is over the way back when a window begins: such windows rank last. */
    private static boolean cutOff(Optional<WaterGuard> guard, HourWindow window) {
        return guard.isPresent()
                && guard.get().at(Epoch.seconds(window.start()), 0, 0) instanceof WaterGuard.Verdict.Gone;
    }

    /** By when to be off the rock, seen from the start of a window. */
    private static JsonObject leaveBy(WaterGuard guard, double start, Optional<FrameFields> frames) {
        JsonObject one = new JsonObject();
        double exposure = frames.map(FrameFields::toSeconds).orElse(0.0);
        GuardAnswer.put(
                one,
                guard.at(start, exposure, frames.map(FrameFields::busySeconds).orElse(0.0)));
        one.put("rulingMetres", guard.lowestMetres());
        one.put("marginMetres", guard.marginMetres());
        return one;
    }

    private static JsonArray ends(double first, double last) {
        return Json.array(first, last);
    }

    /** What keeps windows away: the wish that fails most, and those whose relaxing would help. */
    private static void putNone(JsonObject answer, HourAnswer found) {
        answer.put("conflict", null);
        JsonArray shortfalls = new JsonArray();
        JsonArray ways = new JsonArray();
        for (Shortfall shortfall : found.shortfalls()) {
            JsonObject one = new JsonObject();
            one.put("wish", shortfall.word());
            one.put("failsMinutes", shortfall.failsMinutes());
            one.put("ofMinutes", shortfall.ofMinutes());
            one.put("windowsWithout", shortfall.windowsWithout());
            one.put("shortBy", Json.number(shortfall.shortBy()));
            one.put("unit", shortfall.unit());
            one.put("text", words(shortfall));
            if (shortfalls.isEmpty()) {
                answer.put("conflict", one);
            }
            shortfalls.add(one);
            if (shortfall.windowsWithout() > 0) {
                ways.add("relax " + shortfall.word() + amount(shortfall) + ", or leave it out: "
                        + shortfall.windowsWithout() + (shortfall.windowsWithout() == 1 ? " window" : " windows"));
            }
        }
        answer.put("shortfalls", shortfalls);
        answer.put("ways", ways);
    }

    private static String words(Shortfall shortfall) {
        double share = 100.0 * shortfall.failsMinutes() / shortfall.ofMinutes();
        String fails = shortfall.word() + " fails at " + (share > 99.5 && share < 100 ? "more than 99" : share(share))
                + " % of the minutes";
        if (shortfall.shortBy().isEmpty()) {
            return fails;
        }
        return fails + ", at best by" + number(shortfall);
    }

    private static String share(double percent) {
        return Numbers.shortest(percent, percent < 10 ? 1 : 0);
    }

    private static String amount(Shortfall shortfall) {
        return shortfall.shortBy().isPresent() ? " by" + number(shortfall) : "";
    }

    private static String number(Shortfall shortfall) {
        double by = shortfall.shortBy().orElse(0);
        // rounded up, so that relaxing by what is said is enough
        double scale = by < 1 ? 100 : 10;
        String text = Numbers.shortest(Math.ceil(by * scale) / scale, 2);
        boolean joined = shortfall.unit().isEmpty() || shortfall.unit().equals("°");
        return " " + text + (joined ? shortfall.unit() : " " + shortfall.unit().strip());
    }

    private static JsonArray assumed(Fields fields, Scene scene, HourWishes wishes) {
        JsonArray assumed = new JsonArray();
        assumed.addAll(wishes.assumptions());
        if (scene.light().cloud().equals(Cloud.CLEAR)
                && !fields.has("cloud")
                && !scene.light().metered()) {
            assumed.add("the light is that of a clear sky; average cloud takes 1 to 2 stops");
        }
        if (!fields.has("skylineDegrees") && fields.has("view")) {
            assumed.add("the horizon is level; hills in the view hide sun and moon earlier");
        }
        return assumed;
    }

    private static JsonArray cautions(boolean tide) {
        JsonArray cautions = new JsonArray();
        if (tide) {
            cautions.add(WaterGuard.CAUTION);
        }
        cautions.add(SUN_CAUTION);
        cautions.add(NIGHT_CAUTION);
        return cautions;
    }
}
