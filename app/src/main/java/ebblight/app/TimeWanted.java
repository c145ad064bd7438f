package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;

/**
 * The shutter time that the settings are to be solved for: inside the window where all wishes hold, or, when they
 * clash, the one time between that gives each wish a part.
 *
 * @param fromSeconds shortest time wanted
 * @param toSeconds longest time wanted
 * @param compromise whether it fulfils no wish in full
 */
record TimeWanted(double fromSeconds, double toSeconds, boolean compromise) {

    private static final double SHORTEST_SECONDS = 1.0 / 60;
    /** Where a window has no upper end, this many times its lower end is long enough. */
    private static final double OPEN_SPAN = 4;

    /** From the answer to {@code wish/1}. */
    static TimeWanted of(JsonObject wished) {
        JsonArray windows = wished.getArray("windows");
        if (!windows.isEmpty()) {
            JsonObject window = windows.getObject(0);
            // inside the sure part when there is one
            JsonObject span = window.get("sure") instanceof JsonObject sure ? sure : window;
            double from = Math.max(SHORTEST_SECONDS, span.getDouble("fromSeconds"));
            double to = span.isNull("toSeconds") ? OPEN_SPAN * from : span.getDouble("toSeconds");
            return new TimeWanted(from, Math.max(from, to), false);
        }
        JsonObject conflict = wished.getObject("conflict");
        JsonArray ways = conflict.getArray("ways");
        for (String kind : new String[] {"between", "relax"}) {
            for (int i = 0; i < ways.size(); i++) {
                JsonObject way = ways.getObject(i);
                if (way.getString("kind").equals(kind)
                        && !way.getArray("seconds").isEmpty()) {
                    double seconds = way.getArray("seconds").getDouble(0);
                    return new TimeWanted(seconds, seconds, true);
                }
            }
        }
        double longer = conflict.isNumber("longerSeconds") ? conflict.getDouble("longerSeconds") : 1;
        return new TimeWanted(longer, longer, true);
    }
}
