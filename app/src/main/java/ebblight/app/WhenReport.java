package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import ebblight.app.plan.GuardWords;
import ebblight.app.plan.Zone;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/** Prints {@code when/1} for a person. */
final class WhenReport {

    private static final int MOST = 40;

    private final JsonObject answer;
    private final Zone zone;
    private final Printer printer;

    WhenReport(JsonObject answer, Zone zone, Printer printer) {
        this.answer = answer;
        this.zone = zone;
        this.printer = printer;
    }

    void print() {
        List<JsonObject> windows = Asked.rows(answer.getArray("windows"));
        printer.line(printer.strong(answer.getString("at") + "   "
                + (windows.size() == 1 ? "1 window" : windows.size() + " windows") + "   hours in " + zone.name()));
        for (JsonObject view : Asked.rows(answer.getArray("views", new JsonArray()))) {
            printer.line((view.getBoolean("asked") ? "for " : "also planned, --view ") + view.getString("id") + ", "
                    + view.getString("name"));
        }
        JsonObject station = answer.getObject("station");
        if (station != null) {
            printer.line(printer.faint("water: " + station.getString("name")
                    + (station.isNumber("distanceKilometres")
                            ? ", " + Words.number(station.getDouble("distanceKilometres"), 1) + " km away"
                            : "")
                    + ", metres above " + answer.getString("datum") + "; " + station.getString("source") + "; "
                    + station.getString("licence")));
        }
        windows(windows);
        packing();
        guess();
        for (Object assumed : answer.getArray("assumed")) {
            printer.line(printer.faint("assumed: " + assumed));
        }
        for (Object warning : answer.getArray("warnings")) {
            printer.line(printer.strong(String.valueOf(warning)));
        }
        printer.line("");
        for (Object caution : answer.getArray("cautions")) {
            printer.line(String.valueOf(caution));
        }
    }

    private void windows(List<JsonObject> windows) {
        printer.line("");
        if (windows.isEmpty()) {
            none();
            return;
        }
        boolean water = answer.has("datum");
        if (water) {
            printer.line(printer.faint(
                    "falling water first, then turning, then rising; last where the way back is cut off"));
        }
        List<JsonObject> ranked = windows.stream()
                .sorted(Comparator.comparingInt(w -> w.getInt("rank")))
                .limit(MOST)
                .toList();
        for (JsonObject window : ranked) {
            Instant start = Instant.parse(window.getString("start"));
            Instant end = Instant.parse(window.getString("end"));
            String frames = window.isNumber("frames")
                    ? ", " + window.getLong("frames") + (window.getLong("frames") == 1 ? " frame" : " frames") + " fit"
                    : "";
            String until = Duration.between(start, end).toHours() >= 20 ? zone.dayAndHour(end) : zone.hour(end);
            printer.line(printer.strong(zone.dayAndHour(start) + " to " + until) + "   "
                    + length(window.getLong("minutes")) + frames + "   at the tripod by "
                    + zone.hour(Instant.parse(window.getString("atTripodBy")))
                    + (GuardWords.of(window, zone).isEmpty() ? "" : "   " + GuardWords.of(window, zone)));
            List<String> why =
                    window.getArray("why").stream().map(String::valueOf).toList();
            String way = window.getString("water") + " water";
            printer.line("    " + String.join("; ", why) + (water && !why.contains(way) ? "; " + way : ""));
        }
        if (windows.size() > MOST) {
            printer.line(printer.faint("… and " + (windows.size() - MOST) + " more; all of them with --json"));
        }
    }

    private static String length(long minutes) {
        return minutes < 120 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }

    private void none() {
        printer.line("In this span the wishes never hold together for long enough.");
        for (JsonObject shortfall : Asked.rows(answer.getArray("shortfalls"))) {
            printer.line("    " + shortfall.getString("text"));
        }
        for (Object way : answer.getArray("ways")) {
            printer.line(String.valueOf(way));
        }
        if (answer.getArray("ways").isEmpty()) {
            printer.line("Relaxing one of them alone is not enough; begin with the first.");
        }
    }

    private void packing() {
        if (!answer.has("packing")) {
            return;
        }
        JsonObject packing = answer.getObject("packing");
        printer.line("");
        List<String> filters =
                packing.getArray("filters").stream().map(String::valueOf).toList();
        printer.line(printer.strong("pack   ")
                + (filters.isEmpty() ? "no filter" : String.join(", ", filters))
                + (packing.getBoolean("compromise") ? "   (with apertures beyond the sharpest, or a higher ISO)" : ""));
        if (packing.isNumber("reachedFraction") && packing.getDouble("reachedFraction") < 1) {
            printer.line("    reaches the wished time in " + Words.percent(packing.getDouble("reachedFraction"))
                    + " of the windows");
        }
        JsonObject missing = packing.getObject("missing");
        if (missing != null) {
            printer.line("    " + zone.dayAndHour(Instant.parse(missing.getString("time"))) + ": "
                    + missing.getString("text"));
        }
    }

    private void guess() {
        JsonObject guess = answer.getObject("guess");
        if (guess == null) {
            return;
        }
        printer.line("");
        printer.line(printer.strong("before any clip") + "   " + guess.getString("mark"));
        for (String part : List.of("water", "cloud")) {
            if (guess.getObject(part) != null) {
                List<String> limits = Asked.rows(guess.getObject(part).getArray("limits")).stream()
                        .map(l -> l.getString("text"))
                        .toList();
                printer.line("    " + part + ": " + String.join("; ", limits));
            }
        }
    }
}
