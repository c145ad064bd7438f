package ebblight.app.kit;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.FilterCheck;
import ebblight.core.exposure.Numbers;
import ebblight.engine.RequestException;
import java.util.ArrayList;
import java.util.List;

/** A filter of the kit with what was measured of it. */
public final class MeasuredFilter {

    private MeasuredFilter() {}

    /** The row of {@code kit/1} whose name or strength is {@code name}. */
    public static JsonObject find(JsonObject kit, String name) {
        JsonArray filters = kit.getArray("filters");
        List<String> names = new ArrayList<>();
        for (String field : List.of("name", "takes")) {
            for (int i = 0; i < filters.size(); i++) {
                JsonObject row = filters.getObject(i);
                if (name.equalsIgnoreCase(row.getString(field))) {
                    return row;
                }
                names.add(row.getString(field));
            }
        }
        throw new RequestException(
                "filter",
                "\"" + name + "\" is not in the kit; it holds "
                        + (filters.isEmpty() ? "no filter" : String.join(", ", names.subList(0, filters.size()))));
    }

    /**
     * Adds the filters in the bag of {@code kit/1} as a request for settings names them.
     *
     * @param filters takes what each is, {@code 6}
     * @param measured takes what was measured of some, {@code 6=6.24}
     */
    public static void bag(JsonObject kit, JsonArray filters, JsonArray measured) {
        for (Object each : kit.getArray("filters")) {
            JsonObject row = (JsonObject) each;
            if (row.getBoolean("inBag", false)) {
                String takes = row.getString("takes");
                filters.add(takes);
                if (row.isNumber("measuredStops")) {
                    measured.add(takes + "=" + row.getDouble("measuredStops"));
                }
            }
        }
    }

    /** Writes a result into a row. */
    public static void put(JsonObject row, FilterCheck check, String day) {
        row.put("measuredStops", Math.rint(1000 * check.stops()) / 1000);
        row.put("measuredOn", day.isEmpty() ? null : day);
        row.put(
                "cast",
                check.castWord() + ": red × " + Numbers.shortest(check.red(), 3) + ", blue × "
                        + Numbers.shortest(check.blue(), 3));
    }
}
