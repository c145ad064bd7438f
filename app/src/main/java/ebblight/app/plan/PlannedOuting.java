package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import java.util.List;

/** The part of {@code outing.json} that is known before anybody went: place, view, wishes of the hour, plan. */
public final class PlannedOuting {

    private static final List<String> OF_PLACE = List.of("name", "at", "elevationMetres", "station", "skylineDegrees");
    private static final List<String> OF_PLAN = List.of(
            "from", "to", "minMinutes", "setUpMinutes", "exposure", "guard", "guess", "cloud", "weather", "table");
    private static final List<String> OF_VIEW = List.of("azimuth", "altitude", "focalMillimetres", "sensorMillimetres");
    private static final List<String> AROUND = List.of("schema", "zone", "view", "kit", "note", "meter");

    private PlannedOuting() {}

    /** Puts wishes ({@code wishes/1}) into the document of an outing. */
    public static void put(JsonObject outing, JsonObject wishes) {
        outing.put("place", some(wishes, OF_PLACE));
        if (wishes.has("zone")) {
            outing.put("zone", wishes.get("zone"));
        }
        outing.put("plan", some(wishes, OF_PLAN));
        JsonObject hour = new JsonObject();
        for (String name : wishes.keySet()) {
            if (!OF_PLACE.contains(name) && !OF_PLAN.contains(name) && !AROUND.contains(name)) {
                hour.put(name, wishes.get(name));
            }
        }
        JsonArray views = outing.getArray("views", new JsonArray());
        if (wishes.has("view") || !hour.isEmpty() || views.isEmpty()) {
            JsonObject view = views.isEmpty() ? new JsonObject() : views.getObject(0);
            if (views.isEmpty()) {
                view.put("id", "view-1");
                view.put("name", "first view");
                views.add(view);
            }
            if (wishes.has("view")) {
                view.putAll(some(wishes.getObject("view"), OF_VIEW));
            }
            view.put("hour", hour);
        }
        outing.put("views", views);
    }

    /** What is wrong with a field of a question, said of the place in {@code outing.json} where the field stands. */
    public static String said(String problem) {
        String name = problem.replaceFirst("[.:\\[].*", "");
        String before = AROUND.contains(name)
                ? ""
                : OF_PLACE.contains(name) ? "place." : OF_PLAN.contains(name) ? "plan." : "views.hour.";
        return "outing.json, " + before + problem + "; correct it in the file, or set it anew on this page";
    }

    private static JsonObject some(JsonObject from, List<String> names) {
        JsonObject some = new JsonObject();
        for (String name : names) {
            if (from.has(name)) {
                some.put(name, from.get(name));
            }
        }
        return some;
    }
}
