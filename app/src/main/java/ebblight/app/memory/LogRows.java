package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;

/** The log of an outing as rows of the memory. */
final class LogRows {

    private static final String[] FIELDS = {
        "openedAt", "view", "file", "openSeconds", "plannedSeconds", "offStops", "exposureValue100", "verdict"
    };

    private LogRows() {}

    static JsonObject of(JsonObject outing) {
        JsonArray entries = new JsonArray();
        for (JsonObject entry : Asked.rows(outing.getArray("log", new JsonArray()))) {
            if (entry.isString("openedAt")) {
                JsonObject row = new JsonObject();
                for (String field : FIELDS) {
                    if (entry.has(field)) {
                        row.put(field, entry.get(field));
                    }
                }
                entries.add(row);
            }
        }
        JsonObject found = new JsonObject();
        found.put("entries", entries);
        return found;
    }
}
