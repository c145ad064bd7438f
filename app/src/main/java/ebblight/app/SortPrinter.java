package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** A sorted card for people: each group with its frames, the best first. */
final class SortPrinter {

    private static final int MOST_SKIPPED = 20;

    private SortPrinter() {}

    static void print(JsonObject document, Printer printer) {
        List<JsonObject> groups = Asked.rows(document.getArray("groups"));
        for (int k = 0; k < groups.size(); k++) {
            group(k + 1, groups.get(k), printer);
        }
        if (document.getBoolean("measuredBefore", false)) {
            printer.line("known    nothing on the card changed since it was sorted; --anew measures it again");
        }
        JsonObject clock = document.getObject("clock");
        if (clock != null) {
            double ahead = clock.getDouble("cameraAheadSeconds");
            printer.line(
                    "clock    the camera's is %.0f s %s the slate's",
                    Math.abs(ahead), ahead >= 0 ? "ahead of" : "behind");
        }
        for (JsonObject filter : Asked.rows(document.getArray("filters"))) {
            printer.line(
                    "filter   %s takes %.2f stops (%.2f to %.2f), cast %s, by %d pairs",
                    filter.getString("filter"),
                    filter.getDouble("stops"),
                    filter.getDouble("low"),
                    filter.getDouble("high"),
                    filter.getString("castWord"),
                    filter.getArray("pairs").size());
        }
        for (JsonObject spot : Asked.rows(document.getArray("dust"))) {
            printer.line(
                    "dust     on the sensor %.0f %% from the left, %.0f %% from the top: takes %.2f stop at its middle,"
                            + " seen in %d views",
                    100 * spot.getDouble("x"),
                    100 * spot.getDouble("y"),
                    spot.getDouble("stops"),
                    spot.getInt("views"));
        }
        List<JsonObject> skipped = Asked.rows(document.getArray("skipped"));
        for (JsonObject each : skipped.subList(0, Math.min(MOST_SKIPPED, skipped.size()))) {
            printer.line("skipped  " + each.getString("file") + ": " + each.getString("reason"));
        }
        if (skipped.size() > MOST_SKIPPED) {
            printer.line("skipped  and " + (skipped.size() - MOST_SKIPPED) + " more (all with --json)");
        }
        for (JsonObject each : Asked.rows(document.getArray("sidecars", new JsonArray()))) {
            printer.line("rating   " + each.getString("file") + ": " + each.getString("text"));
        }
    }

    private static void group(int number, JsonObject group, Printer printer) {
        List<JsonObject> frames = new ArrayList<>(Asked.rows(group.getArray("frames")));
        String kind = group.getString("kind");
        printer.line(printer.strong((kind.equals("view") ? "view" : kind) + " " + number + ", " + frames.size()
                + (frames.size() == 1 ? " frame" : " frames") + ", from "
                + group.getArray("frames").getObject(0).getString("taken", "an unknown time")));
        frames.sort(Comparator.comparingInt(f -> f.getInt("rank")));
        Set<Integer> told = new HashSet<>();
        for (JsonObject frame : frames) {
            int burst = frame.getInt("burst", 0);
            if (burst > 0 && !told.add(burst)) {
                continue; // the best of a burst speaks for it
            }
            printer.line(
                    "%3d  %-16s %s%s", frame.getInt("rank"), frame.getString("file"), settings(frame), role(frame));
            printer.line(printer.faint("       " + String.join("; ", strings(frame.getArray("notes")))));
            if (burst > 0) {
                long others = frames.stream()
                                .filter(f -> f.getInt("burst", 0) == burst)
                                .count()
                        - 1;
                printer.line(printer.faint(
                        "       and " + others + " more of this burst, ranked below it (all with --json)"));
            }
        }
        printer.line("");
    }

    private static String settings(JsonObject frame) {
        return (frame.isNumber("exposureSeconds") ? Words.time(frame.getDouble("exposureSeconds")) + "  " : "")
                + (frame.isNumber("fNumber") ? "f/" + plain(frame.getDouble("fNumber")) + "  " : "")
                + (frame.isNumber("iso") ? "ISO " + plain(frame.getDouble("iso")) + "  " : "");
    }

    private static String role(JsonObject frame) {
        String role = frame.getString("role");
        boolean filtered = frame.isNumber("filterStops") && frame.getDouble("filterStops") > 0.5;
        return role + (filtered ? ", about " + plain(frame.getDouble("filterStops")) + " stops of filter" : "");
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }

    private static List<String> strings(JsonArray array) {
        return array.stream().map(String::valueOf).toList();
    }
}
