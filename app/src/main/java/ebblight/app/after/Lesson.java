package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.app.draw.LessonSheet;
import ebblight.app.draw.LessonSheet.Row;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** What a page of plan against result says: documents that other commands printed with {@code --json}, and Exif. */
final class Lesson {

    /** What each document must hold to be of use. */
    private static final Map<String, String> NEEDED = Map.of(
            "wish/1", "demands",
            "settings/1", "choices",
            "when/1", "windows",
            "measure/1", "regions",
            "stack/1", "frames");

    private final List<Row> plan = new ArrayList<>();
    private final List<Row> made = new ArrayList<>();
    private OptionalDouble plannedSeconds = OptionalDouble.empty();

    List<LessonSheet.Row> plan() {
        return plan.isEmpty() ? List.of(new Row("", "no plan was given", false)) : plan;
    }

    List<LessonSheet.Row> made() {
        return made;
    }

    /** Adds what a document says that must be of {@code schema}. */
    void add(String schema, Path file) throws IOException {
        JsonObject document = SurveyRequest.document(file);
        String found = document.getString("schema", "none");
        if (!found.equals(schema)) {
            throw new UnreadableInputException(file, "is of schema " + found + ", expected a " + schema);
        }
        String needed = NEEDED.getOrDefault(schema, "schema");
        if (!document.has(needed)) {
            throw new UnreadableInputException(
                    file, "lacks " + needed + ", which every document of schema " + schema + " has");
        }
        switch (schema) {
            case "wish/1" -> wish(document);
            case "settings/1" -> settings(document);
            case "when/1" -> when(document);
            case "measure/1" -> measure(document);
            default -> stack(document);
        }
    }

    private void wish(JsonObject document) {
        List<String> wishes = Asked.rows(document.getArray("demands")).stream()
                .map(d -> d.getString("wish", "").replace("=", " "))
                .toList();
        plan.add(new Row("Wish", wishes.isEmpty() ? "none" : String.join(", ", wishes), false));
        List<String> windows = Asked.rows(document.getArray("windows", new JsonArray())).stream()
                .map(Lesson::span)
                .toList();
        if (!windows.isEmpty()) {
            plan.add(new Row("Shutter time", String.join(", or ", windows), true));
        } else if (document.get("conflict") instanceof JsonObject conflict) {
            JsonArray ways = conflict.getArray("ways", new JsonArray());
            String way = ways.isEmpty() ? "" : ": " + ways.getObject(0).getString("text", "");
            plan.add(new Row("Shutter time", "no time holds all wishes" + way, true));
        }
    }

    private static String span(JsonObject window) {
        String from = Words.time(window.getDouble("fromSeconds"));
        return window.isNumber("toSeconds")
                ? from + " to " + Words.time(window.getDouble("toSeconds"))
                : from + " and longer";
    }

    private void settings(JsonObject document) {
        JsonArray choices = document.getArray("choices");
        plan.add(new Row("Light", "EV100 " + Words.number(document.getDouble("exposureValue100"), 1), false));
        if (choices.isEmpty()) {
            plan.add(new Row("Settings", "nothing in the bag reaches the time", true));
            return;
        }
        JsonObject first = choices.getObject(0);
        List<String> filters = first.getArray("filters", new JsonArray()).stream()
                .map(String::valueOf)
                .toList();
        plannedSeconds = OptionalDouble.of(first.getDouble("correctedSeconds"));
        plan.add(new Row(
                "Settings",
                (filters.isEmpty() ? "no filter" : "filter " + String.join(" + ", filters) + " stops") + ", f/"
                        + PrintSize.plain(first.getDouble("fNumber")) + ", ISO "
                        + PrintSize.plain(first.getDouble("iso")) + ", " + first.getString("dial"),
                true));
    }

    private void when(JsonObject document) {
        JsonArray windows = document.getArray("windows", new JsonArray());
        if (!windows.isEmpty()) {
            JsonObject first = windows.getObject(0);
            plan.add(new Row("Window", first.getString("start") + " to " + first.getString("end"), false));
        }
    }

    private void measure(JsonObject document) {
        List<String> parts = Asked.rows(document.getArray("regions")).stream()
                .map(r -> r.getString("kind") + " " + Words.percent(r.getDouble("areaFraction")) + " of the picture"
                        + (r.isNumber("texture") ? ", detail in motion " + Words.percent(r.getDouble("texture")) : ""))
                .limit(5)
                .toList();
        plan.add(new Row("Measured", String.join("; ", parts), false));
    }

    private void stack(JsonObject document) {
        String light =
                document.isNumber("seconds") ? ", " + Words.time(document.getDouble("seconds")) + " of light" : "";
        made.add(new Row("Stack", document.getInt("frames") + " frames" + light, true));
    }

    /** Adds how the result was taken, and how far from the plan that is. */
    void taken(FrameFacts facts) {
        String exposure = exposure(facts);
        made.add(0, new Row("Exposure", exposure.isEmpty() ? "the file does not say" : exposure, true));
        facts.taken().ifPresent(t -> made.add(new Row("Taken", t.toString().replace('T', ' '), false)));
        if (plannedSeconds.isPresent() && facts.exposureSeconds().isPresent()) {
            double stops = Math.log(facts.exposureSeconds().getAsDouble() / plannedSeconds.getAsDouble()) / Math.log(2);
            made.add(new Row(
                    "Against plan",
                    Math.abs(stops) < 0.05
                            ? "as long as planned"
                            : String.format(
                                    Locale.ROOT,
                                    "%.1f stops %s than planned",
                                    Math.abs(stops),
                                    stops > 0 ? "longer" : "shorter"),
                    true));
        }
    }

    /** Adds what the long time changed against the picture without it. */
    void changed(double share) {
        made.add(new Row("With, without", Words.percent(share) + " of the picture differ by more than 5 %", false));
    }

    /** Shutter time, aperture, ISO and focal length in words, as far as they are known. */
    static String exposure(FrameFacts facts) {
        List<String> parts = new ArrayList<>();
        facts.exposureSeconds().ifPresent(t -> parts.add(Words.time(t)));
        facts.fNumber().ifPresent(n -> parts.add("f/" + PrintSize.plain(n)));
        facts.isoSpeed().ifPresent(s -> parts.add("ISO " + PrintSize.plain(s)));
        facts.focalMillimetres().ifPresent(f -> parts.add(PrintSize.plain(f) + " mm"));
        return String.join(", ", parts);
    }
}
