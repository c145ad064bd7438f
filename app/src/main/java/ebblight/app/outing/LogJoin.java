package ebblight.app.outing;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import java.util.HashSet;
import java.util.Set;

/** Takes what a phone wrote on the spot into the outing: log, readings, the time to leave. */
public final class LogJoin {

    private LogJoin() {}

    /**
     * Adds the entries of {@code brought} that {@code outing} does not have yet; joining twice adds nothing.
     *
     * @return how many entries were added
     */
    public static int into(JsonObject outing, JsonObject brought) {
        JsonArray log = outing.getArray("log", new JsonArray());
        Set<String> known = new HashSet<>();
        log.forEach(entry -> known.add(opened(entry)));
        int added = 0;
        for (Object entry : brought.getArray("log", new JsonArray())) {
            if (!opened(entry).isEmpty() && known.add(opened(entry))) {
                log.add(entry);
                added++;
            }
        }
        outing.put("log", log);
        JsonObject light = brought.getObject("light");
        if (light != null && !light.getArray("readings", new JsonArray()).isEmpty()) {
            outing.put("light", light);
        }
        if (brought.has("guard")) {
            outing.put("guard", brought.get("guard"));
        }
        return added;
    }

    private static String opened(Object entry) {
        return entry instanceof JsonObject one ? one.getString("openedAt", "") : "";
    }
}
