package ebblight.app.kit;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.Filter;
import ebblight.engine.RequestException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a row of the kit may hold. */
final class KitFields {

    private static final Set<String> FLAGS = Set.of("darkFrame", "opticalFinder", "inBag");
    private static final Set<String> TEXTS = Set.of("name", "takes", "measuredOn", "cast");
    private static final int LONGEST_TEXT = 200;
    private static final int MOST_ROWS = 100;

    private KitFields() {}

    static @Nullable Object fromDatabase(String column, @Nullable Object value) {
        return FLAGS.contains(column) ? value instanceof Number number && number.intValue() != 0 : value;
    }

    static @Nullable Object toDatabase(String column, @Nullable Object value) {
        return FLAGS.contains(column) ? Boolean.TRUE.equals(value) ? 1 : 0 : value;
    }

    /** Refuses a kit that could not be worked with, naming the field. */
    static void check(JsonObject kit, Map<String, List<String>> columns) {
        if (!"kit/1".equals(kit.getString("schema"))) {
            throw new RequestException("schema", "must be kit/1");
        }
        columns.forEach((list, names) -> {
            if (kit.has(list) && !(kit.get(list) instanceof JsonArray)) {
                throw new RequestException(list, "must be a list");
            }
            JsonArray rows = kit.getArray(list, new JsonArray());
            if (rows.size() > MOST_ROWS) {
                throw new RequestException(list, "holds more than 100 entries");
            }
            for (int i = 0; i < rows.size(); i++) {
                String where = list + "[" + i + "]";
                if (!(rows.get(i) instanceof JsonObject row)) {
                    throw new RequestException(where, "must be an object");
                }
                row(row, names, where);
            }
        });
    }

    private static void row(JsonObject row, List<String> names, String where) {
        for (String name : names) {
            Object value = row.get(name);
            String field = where + "." + name;
            if (value == null) {
                if (name.equals("name") || name.equals("takes")) {
                    throw new RequestException(field, "is missing");
                }
            } else if (FLAGS.contains(name)) {
                if (!(value instanceof Boolean)) {
                    throw new RequestException(field, "must be true or false");
                }
            } else if (TEXTS.contains(name)) {
                if (!(value instanceof String text) || text.length() > LONGEST_TEXT) {
                    throw new RequestException(field, "must be a text of at most 200 signs");
                }
            } else if (!(value instanceof Number number) || !(number.doubleValue() > 0)) {
                throw new RequestException(field, "must be a number above 0, was " + value);
            }
        }
        if (row.get("takes") instanceof String takes) {
            try {
                Filter.parse(takes);
            } catch (IllegalArgumentException e) {
                throw new RequestException(where + ".takes", String.valueOf(e.getMessage()));
            }
        }
    }
}
