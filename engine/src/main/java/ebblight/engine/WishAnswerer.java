package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.RegionMotion;
import ebblight.core.motion.Worth;
import ebblight.core.numeric.Work;
import ebblight.core.wish.Clash;
import ebblight.core.wish.Demand;
import ebblight.core.wish.Window;
import ebblight.core.wish.Wish;
import ebblight.core.wish.Wishes;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Answers {@code wish/1}: the shutter window in which all wishes hold. */
final class WishAnswerer implements Engine.Answerer {

    private final Surveys surveys;

    WishAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        List<Wish> wishes = new ArrayList<>();
        for (String typed : request.texts("wishes")) {
            wishes.add(Checked.of("wish", () -> Wish.parse(typed)));
        }
        Surveys.Kept kept = surveys.of(request, blobs, work);
        Measurement measurement = kept.measurement(work);
        Wishes weighed = Checked.of("wish", () -> Wishes.of(wishes, measurement));
        JsonObject answer = new JsonObject();
        JsonArray windows = new JsonArray();
        for (Window window : weighed.windows()) {
            JsonObject one = Spans.object(window.likely());
            one.put("sure", window.sure().map(Spans::object).orElse(null));
            windows.add(one);
        }
        answer.put("windows", windows);
        answer.put("demands", demands(weighed));
        answer.put("regions", regions(measurement));
        answer.put("worth", worth(kept.worth(work)));
        answer.put("conflict", conflict(weighed));
        JsonArray warnings = new JsonArray();
        warnings.addAll(Warnings.of(measurement, Surveys.spaced(request)));
        answer.put("warnings", warnings);
        return answer;
    }

    private static JsonArray demands(Wishes weighed) {
        JsonArray array = new JsonArray();
        for (Demand demand : weighed.demands()) {
            JsonObject one = new JsonObject();
            one.put("wish", demand.wish().text());
            one.put("region", demand.region());
            one.put("likely", Spans.array(demand.likely()));
            one.put("sure", Spans.array(demand.sure()));
            one.put("note", demand.note());
            array.add(one);
        }
        return array;
    }

    private static JsonArray regions(Measurement measurement) {
        JsonArray array = new JsonArray();
        for (RegionMotion region : measurement.regions()) {
            JsonObject one = new JsonObject();
            one.put("id", region.part().id());
            one.put("kind", region.part().kind().word());
            one.put("areaFraction", region.part().areaFraction());
            one.put("left", Left.listed(region));
            array.add(one);
        }
        return array;
    }

    private static JsonArray worth(List<Worth> measured) {
        JsonArray array = new JsonArray();
        for (Worth worth : measured) {
            JsonObject one = new JsonObject();
            one.put("seconds", worth.seconds());
            one.put("changedFraction", Json.number(worth.changedFraction()));
            one.put("separation", Json.number(worth.separation()));
            one.put("colour", Json.number(worth.colour()));
            array.add(one);
        }
        return array;
    }

    private static @Nullable JsonObject conflict(Wishes weighed) {
        if (weighed.clash().isEmpty()) {
            return null;
        }
        Clash clash = weighed.clash().get();
        JsonObject one = new JsonObject();
        JsonArray between = new JsonArray();
        between.add(clash.first().wish().text());
        if (!clash.first().equals(clash.second())) {
            between.add(clash.second().wish().text());
        }
        one.put("between", between);
        one.put("stops", Json.number(clash.stops()));
        one.put("shorterSeconds", Json.number(clash.shorterSeconds()));
        one.put("longerSeconds", Json.number(clash.longerSeconds()));
        JsonArray ways = new JsonArray();
        for (Clash.Way way : clash.ways()) {
            JsonObject entry = new JsonObject();
            entry.put("kind", way.kind());
            entry.put(
                    "seconds",
                    Json.array(way.seconds().stream()
                            .mapToDouble(Double::doubleValue)
                            .toArray()));
            entry.put("frames", way.frames());
            entry.put("text", way.words());
            ways.add(entry);
        }
        one.put("ways", ways);
        return one;
    }
}
