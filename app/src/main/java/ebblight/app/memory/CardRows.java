package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.RatingSidecar;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/** The frames of a sorted card as rows of the memory, with the marks beside them. */
final class CardRows {

    private static final String[] FIELDS = {
        "role",
        "rank",
        "fixedSharpness",
        "smoothness",
        "clippedFraction",
        "taken",
        "exposureSeconds",
        "fNumber",
        "iso",
        "focalMillimetres"
    };

    private CardRows() {}

    static JsonObject of(Path root, Path card, JsonObject sorted) {
        Map<String, Integer> suggested = suggested(sorted);
        JsonArray rows = new JsonArray();
        for (JsonObject group : Asked.rows(sorted.getArray("groups"))) {
            for (JsonObject frame : Asked.rows(group.getArray("frames"))) {
                Path file = card.resolve(frame.getString("file"));
                JsonObject row = new JsonObject();
                row.put("file", Remembered.relative(root, file));
                for (String field : FIELDS) {
                    row.put(field, frame.get(field));
                }
                RatingSidecar.read(file).ifPresent(rating -> row.put("rating", rating));
                Integer own = suggested.get(RatingSidecar.beside(file).toString());
                if (own != null) {
                    row.put("suggestedRating", own);
                }
                rows.add(row);
            }
        }
        JsonObject found = new JsonObject();
        found.put("frames", rows);
        return found;
    }

    /** Ratings that the program wrote itself just now, by sidecar: they are no choice of the photographer's. */
    private static Map<String, Integer> suggested(JsonObject sorted) {
        Map<String, Integer> suggested = new HashMap<>();
        for (JsonObject each : Asked.rows(sorted.getArray("sidecars", new JsonArray()))) {
            if (each.isNumber("rating")) {
                suggested.put(each.getString("file"), each.getInt("rating"));
            }
        }
        return suggested;
    }
}
