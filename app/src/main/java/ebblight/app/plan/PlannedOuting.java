package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.engine.RequestException;
import java.util.List;

/** The part of {@code outing.json} that is known before anybody went: place, view, wishes of the hour, plan. */
public final class PlannedOuting {

    private static final List<String> OF_PLACE = List.of("name", "at", "elevationMetres", "station", "skylineDegrees");
    private static final List<String> OF_PLAN = List.of(
            "from", "to", "minMinutes", "setUpMinutes", "exposure", "guard", "guess", "cloud", "weather", "table");
    private static final List<String> OF_VIEW = List.of("azimuth", "altitude", "focalMillimetres", "sensorMillimetres");
    private static final double USUAL_FOCAL = 24;
    private static final List<String> AROUND = List.of("schema", "zone", "view", "kit", "note", "meter");

    private PlannedOuting() {}

    /** Puts wishes ({@code wishes/1}) into the document of an outing. */
    public static void put(JsonObject outing, JsonObject wishes) {
        outing.put("place", some(wishes, OF_PLACE));
        if (wishes.has("zone")) {
            outing.put("zone", wishes.get("zone"));
        }
        outing.put("plan", some(wishes, OF_PLAN));
        JsonObject hour = hour(wishes);
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

    /**
     * The wishes ({@code wishes/1}) of a planned view: what {@link #put} takes apart, put together again.
     *
     * @throws RequestException when the outing has no place, or nothing is wished of the hour there
     */
    public static JsonObject wishes(JsonObject outing, JsonObject view) {
        JsonObject place = outing.getObject("place", new JsonObject());
        if (!place.has("at")) {
            throw new RequestException("place.at", "is missing: say where, as latitude,longitude, in outing.json");
        }
        JsonObject wishes = new JsonObject();
        wishes.put("schema", "wishes/1");
        wishes.put("zone", outing.getString("zone", "UTC"));
        wishes.putAll(some(place, OF_PLACE));
        wishes.putAll(some(outing.getObject("plan", new JsonObject()), OF_PLAN));
        if (wishes.has("table")) {
            wishes.remove("station");
        }
        if (view.isNumber("azimuth")) {
            JsonObject lens = some(view, OF_VIEW);
            if (!lens.has("focalMillimetres")) {
                lens.put("focalMillimetres", USUAL_FOCAL);
            }
            wishes.put("view", lens);
        }
        wishes.putAll(some(view, List.of("skylineDegrees")));
        wishes.putAll(view.getObject("hour", new JsonObject()));
        return wishes;
    }

    /** Views of which something is wished of the hour, in their order. */
    public static List<JsonObject> planned(JsonObject outing) {
        return outing.getArray("views", new JsonArray()).stream()
                .filter(v -> v instanceof JsonObject view && view.has("hour"))
                .map(JsonObject.class::cast)
                .toList();
    }

    /** Adds a view with what is wished there, or what is wished of the first. */
    public static JsonObject add(JsonObject outing, String name, JsonObject wishes) {
        JsonArray views = outing.getArray("views", new JsonArray());
        int last = 0;
        for (Object each : views) {
            String id = ((JsonObject) each).getString("id", "");
            if (id.matches("view-\\d{1,6}")) {
                last = Math.max(last, Integer.parseInt(id.substring("view-".length())));
            }
        }
        JsonObject view = new JsonObject();
        view.put("id", "view-" + (last + 1));
        view.put("name", name);
        view.putAll(some(wishes.getObject("view", new JsonObject()), OF_VIEW));
        JsonObject hour = hour(wishes);
        List<JsonObject> before = planned(outing);
        view.put("hour", hour.isEmpty() && !before.isEmpty() ? before.get(0).getObject("hour") : hour);
        views.add(view);
        outing.put("views", views);
        return view;
    }

    private static JsonObject hour(JsonObject wishes) {
        JsonObject hour = new JsonObject();
        for (String name : wishes.keySet()) {
            if (!OF_PLACE.contains(name) && !OF_PLAN.contains(name) && !AROUND.contains(name)) {
                hour.put(name, wishes.get(name));
            }
        }
        return hour;
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
