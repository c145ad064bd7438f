package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import ebblight.app.plan.Zone;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** Prints {@code tide/1} for a person. */
final class TideReport {

    private final JsonObject answer;
    private final Zone zone;
    private final Printer printer;

    TideReport(JsonObject answer, Zone zone, Printer printer) {
        this.answer = answer;
        this.zone = zone;
        this.printer = printer;
    }

    void print() {
        heading();
        printer.line("");
        printer.line(printer.strong("high and low water, metres above " + answer.getString("datum") + ", ± "
                + Words.number(answer.getDouble("levelRangeMetres"), 1) + " m by weather on most days; hours in "
                + zone.name()));
        for (JsonObject water : Asked.rows(answer.getArray("extremes"))) {
            printer.line(
                    "%s  %-4s  %6.2f m",
                    zone.dayAndHour(Instant.parse(water.getString("time"))),
                    water.getString("kind"),
                    water.getDouble("heightMetres"));
        }
        if (answer.getArray("extremes").isEmpty()) {
            printer.line("none in this span");
        }
        for (JsonObject turn : Asked.rows(answer.getArray("springs"))) {
            printer.line("%s  %s", zone.dayAndHour(Instant.parse(turn.getString("time"))), turn.getString("kind"));
        }
        spans();
        heights();
        for (Object warning : answer.getArray("warnings")) {
            printer.line("");
            printer.line(printer.strong(String.valueOf(warning)));
        }
        printer.line("");
        for (Object caution : answer.getArray("cautions")) {
            printer.line(String.valueOf(caution));
        }
    }

    private void heading() {
        JsonObject station = answer.getObject("station");
        if (station == null) {
            printer.line(printer.strong("typed table of waters"));
            return;
        }
        printer.line(printer.strong(station.getString("name")
                        + (station.getString("country").isEmpty() ? "" : ", " + station.getString("country")))
                + "   " + station.getString("id")
                + (station.isNumber("distanceKilometres")
                        ? "   " + Words.number(station.getDouble("distanceKilometres"), 1) + " km away"
                        : ""));
        printer.line(printer.faint("constants: " + station.getString("source") + "; " + station.getString("licence")));
        if (answer.has("nearest")) {
            List<JsonObject> nearest = Asked.rows(answer.getArray("nearest"));
            for (JsonObject other : nearest.subList(1, nearest.size())) {
                printer.line(printer.faint("next: " + other.getString("name") + " (" + other.getString("id") + "), "
                        + Words.number(other.getDouble("distanceKilometres"), 1) + " km"));
            }
        }
    }

    private void spans() {
        if (!answer.has("spans")) {
            return;
        }
        printer.line("");
        printer.line(printer.strong("between the heights asked for"));
        for (JsonObject span : Asked.rows(answer.getArray("spans"))) {
            printer.line(
                    "%s to %s",
                    zone.dayAndHour(Instant.parse(span.getString("from"))),
                    zone.hour(Instant.parse(span.getString("to"))));
        }
        if (answer.getArray("spans").isEmpty()) {
            printer.line("never in this span");
        }
    }

    private void heights() {
        if (answer.getArray("heights").isEmpty()) {
            return;
        }
        printer.line("");
        for (JsonObject row : Asked.rows(answer.getArray("heights"))) {
            printer.line(
                    "%s  %s",
                    zone.dayAndHour(Instant.parse(row.getString("time"))),
                    row.isNumber("heightMetres")
                            ? String.format(
                                    Locale.ROOT,
                                    "%6.2f m  %+5.2f m/h",
                                    row.getDouble("heightMetres"),
                                    row.getDouble("risingMetresPerHour"))
                            : "not known");
        }
    }
}
