package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.FilterCheck;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Densities of a filter over the years: a new check is added to the earlier ones. */
public final class Calibrations {

    private Calibrations() {}

    /**
     * Adds a check.
     *
     * @param data folder of the user's own data
     * @param filter its row in {@code kit/1}
     * @param day of the frames, empty when they do not say; a second check of one day takes the first one's place
     */
    public static void add(Path data, JsonObject filter, FilterCheck check, String day) throws IOException {
        JsonObject row = new JsonObject();
        row.put("filter", filter.getString("name"));
        row.put("takes", filter.getString("takes"));
        row.put("measuredOn", day);
        row.put("stops", check.stops());
        row.put("low", check.low());
        row.put("high", check.high());
        row.put("red", check.red());
        row.put("blue", check.blue());
        row.put("pairs", check.perPair().size());
        JsonObject memory = new JsonObject();
        memory.put("schema", MemoryStore.SCHEMA);
        memory.put("calibrations", new JsonArray(List.of(row)));
        new MemoryStore(data).remember(memory);
    }
}
