package ebblight.engine;

import com.grack.nanojson.JsonArray;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.SettingsRequest;
import java.util.ArrayList;
import java.util.List;

/** Reads and writes the filters of a bag. */
final class BagFields {

    private BagFields() {}

    /** The filters as typed, with the measured stops of those that have any ({@code 10=10.3}). */
    static List<Filter> read(Fields fields) {
        List<String> typed = fields.texts("filters");
        List<String> measured = fields.texts("measured");
        if (typed.size() > SettingsRequest.MOST_FILTERS) {
            throw new RequestException(
                    fields.path("filters"),
                    "a bag holds at most " + SettingsRequest.MOST_FILTERS + ", had " + typed.size());
        }
        List<Filter> bag = new ArrayList<>();
        for (String name : typed) {
            bag.add(Checked.of(fields.path("filters"), () -> Filter.parse(name)));
        }
        for (String row : measured) {
            int equals = row.indexOf('=');
            boolean used = false;
            for (int k = 0; equals > 0 && k < bag.size(); k++) {
                if (bag.get(k).name().equals(row.substring(0, equals).trim())) {
                    double stops =
                            Checked.of(fields.path("measured"), () -> Double.parseDouble(row.substring(equals + 1)));
                    Filter filter = bag.get(k);
                    bag.set(k, Checked.of(fields.path("measured"), () -> filter.withMeasured(stops)));
                    used = true;
                }
            }
            if (!used) {
                throw new RequestException(
                        fields.path("measured"),
                        "\"" + row + "\" names no filter of the bag; write NAME=STOPS such as 10=10.3");
            }
        }
        return bag;
    }

    static JsonArray names(List<Filter> filters) {
        JsonArray names = new JsonArray();
        for (Filter filter : filters) {
            names.add(filter.name());
        }
        return names;
    }
}
