package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import ebblight.app.plan.Zone;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Prints {@code sky/1} for a person. */
final class SkyReport {

    private static final String[] POINTS = {
        "N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"
    };

    private static final String[][] EVENTS = {
        {"astronomicalDawn", "astronomical dawn"},
        {"nauticalDawn", "nautical dawn"},
        {"civilDawn", "civil dawn"},
        {"sunrise", "sunrise"},
        {"transit", "sun highest"},
        {"sunset", "sunset"},
        {"civilDusk", "civil dusk"},
        {"nauticalDusk", "nautical dusk"},
        {"astronomicalDusk", "astronomical dusk"},
        {"moonrise", "moonrise"},
        {"moonset", "moonset"}
    };

    private final JsonObject answer;
    private final Zone zone;
    private final Printer printer;

    SkyReport(JsonObject answer, Zone zone, Printer printer) {
        this.answer = answer;
        this.zone = zone;
        this.printer = printer;
    }

    void print() {
        Instant at = Instant.parse(answer.getString("time"));
        printer.line(printer.strong(answer.getString("at") + "   " + zone.dayAndHour(at) + "   " + zone.name()));
        printer.line("");
        body("sun", answer.getObject("sun"), "");
        JsonObject moon = answer.getObject("moon");
        body(
                "moon",
                moon,
                "   " + moon.getString("phaseName") + ", " + Words.percent(moon.getDouble("fraction")) + " lit");
        printer.line(
                "light   EV100 %.1f (± %.1f)   %s lx   %s",
                answer.getDouble("exposureValue100"),
                answer.getDouble("exposureValue100RangeStops"),
                lux(answer.getDouble("illuminanceLux")),
                fading(answer.getDouble("fadingStopsPerMinute")));
        printer.line(printer.faint("        on level ground, " + answer.getString("cloud") + " sky"
                + (answer.getBoolean("metered") ? ", moved to the meter reading" : "")
                + "; the bright sky over the sun itself meters some 4 stops more at sunrise and sunset"));
        events();
        if (answer.has("hours")) {
            hours();
        }
        if (answer.has("view")) {
            view(answer.getObject("view"));
        }
        if (answer.has("exposure")) {
            exposure(answer.getObject("exposure"));
        }
        printer.line("");
        printer.line(printer.faint("Never look at the sun through an optical finder."));
    }

    private void body(String name, JsonObject body, String more) {
        double azimuth = body.getDouble("azimuth");
        printer.line(
                "%-6s  %+6.1f° high   %5.1f° %-3s%s", name, body.getDouble("altitude"), azimuth, point(azimuth), more);
    }

    static String point(double azimuth) {
        return POINTS[(int) Math.round(azimuth / 22.5) % POINTS.length];
    }

    static String lux(double lux) {
        return Words.number(lux, lux >= 10 ? 0 : lux >= 0.1 ? 1 : 4);
    }

    static String fading(double stopsPerMinute) {
        double perTen = 10 * Math.abs(stopsPerMinute);
        if (perTen < 0.05) {
            return "steady";
        }
        return Words.number(perTen, 1) + " stops in 10 min " + (stopsPerMinute > 0 ? "darker" : "brighter");
    }

    private void events() {
        JsonObject events = answer.getObject("events");
        printer.line("");
        if (events.isString("polar")) {
            printer.line(
                    "the sun stays " + (events.getString("polar").equals("day") ? "up" : "down") + " all the time");
        }
        List<String[]> rows = new ArrayList<>();
        for (String[] event : EVENTS) {
            if (events.isString(event[0])) {
                rows.add(new String[] {events.getString(event[0]), event[1]});
            }
        }
        rows.sort((a, b) -> a[0].compareTo(b[0]));
        for (String[] row : rows) {
            printer.line("%s  %s", zone.dayAndHour(Instant.parse(row[0])), row[1]);
        }
    }

    private void hours() {
        printer.line("");
        printer.line(printer.strong("        sun      bearing   moon     EV100"));
        for (JsonObject row : Asked.rows(answer.getArray("hours"))) {
            printer.line(
                    "%s  %+6.1f°  %5.1f° %-3s  %+6.1f°  %5.1f",
                    zone.hour(Instant.parse(row.getString("time"))),
                    row.getObject("sun").getDouble("altitude"),
                    row.getObject("sun").getDouble("azimuth"),
                    point(row.getObject("sun").getDouble("azimuth")),
                    row.getObject("moon").getDouble("altitude"),
                    row.getDouble("exposureValue100"));
        }
    }

    private void view(JsonObject view) {
        printer.line("");
        printer.line(printer.strong(
                "view " + Words.number(view.getDouble("azimuth"), 1) + "° " + point(view.getDouble("azimuth")) + ", "
                        + Words.number(view.getDouble("focalMillimetres"), 0) + " mm"));
        for (String body : List.of("sun", "moon")) {
            JsonObject one = view.getObject(body);
            printer.line("%-6s  %s", body, standing(one.getString("standing")));
            for (JsonObject visit : Asked.rows(one.getArray("inFrame"))) {
                printer.line(
                        "        in the picture %s to %s",
                        zone.dayAndHour(Instant.parse(visit.getString("enters"))),
                        zone.hour(Instant.parse(visit.getString("leaves"))));
            }
        }
        JsonArray glitter = view.getArray("glitter");
        if (!glitter.isEmpty()) {
            JsonObject calm = glitter.getObject(0);
            JsonObject windy = glitter.getObject(glitter.size() - 1);
            printer.line(
                    "glitter path towards %.0f°, %.0f° wide in wind of %.0f m/s%s",
                    calm.getDouble("azimuth"),
                    calm.getDouble("widthDegrees"),
                    calm.getDouble("windMetresPerSecond"),
                    glitter.size() == 1
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    ", %.0f° in %.0f m/s",
                                    windy.getDouble("widthDegrees"),
                                    windy.getDouble("windMetresPerSecond")));
        }
    }

    private static String standing(String word) {
        return switch (word) {
            case "inside" -> "in the picture";
            case "flare" -> "outside, near enough to flare";
            case "side" -> "to the side";
            case "behind" -> "behind the lens";
            default -> "under the horizon";
        };
    }

    private void exposure(JsonObject exposure) {
        printer.line("");
        printer.line("the exposure wants EV100 %.1f", exposure.getDouble("wantedExposureValue100"));
        line("dark enough from", exposure, "darkEnough");
        line("bright enough from", exposure, "brightEnough");
        if (exposure.isNumber("openSeconds")) {
            printer.line("started now, hold it open for " + Words.time(exposure.getDouble("openSeconds"))
                    + " while the light changes");
        }
        for (JsonObject entering : Asked.rows(exposure.getArray("entering"))) {
            printer.line(printer.strong("the " + entering.getString("body") + " enters the picture at "
                    + zone.hour(Instant.parse(entering.getString("time"))) + ", before the shutter closes"));
        }
    }

    private void line(String words, JsonObject exposure, String field) {
        printer.line(words + " "
                + (exposure.isString(field)
                        ? zone.dayAndHour(Instant.parse(exposure.getString(field)))
                        : "— not in this span"));
    }
}
