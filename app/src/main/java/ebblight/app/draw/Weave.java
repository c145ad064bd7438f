package ebblight.app.draw;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import ebblight.app.plan.Zone;
import ebblight.core.numeric.Work;
import ebblight.engine.Engine;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * Days under each other on one axis of hours: night and dusk stand, the water slides across, and where all wishes hold a
 * window lies.
 *
 * @param first day
 * @param days how many
 * @param zone of the clock
 * @param hours {@code sky/1} rows every ten minutes over all days
 * @param spans of the water between the wished heights, when it is wished
 * @param windows found
 * @param small size of the small words
 */
record Weave(
        LocalDate first,
        int days,
        Zone zone,
        List<JsonObject> hours,
        List<JsonObject> spans,
        List<JsonObject> windows,
        double small) {

    static final double HEAD = 24;
    static final int MOST_DAYS = 35;
    private static final int STEP_SECONDS = 600;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    static Weave ask(
            Engine engine, JsonObject request, JsonArray found, LocalDate first, int days, Zone zone, double small) {
        JsonObject asked = new JsonObject();
        asked.put("schema", "sky/1");
        asked.put("at", request.get("at"));
        Instant from = zone.start(first);
        Instant to = zone.start(first.plusDays(days));
        asked.put("from", from.toString());
        asked.put("to", to.toString());
        asked.put("everySeconds", STEP_SECONDS);
        List<JsonObject> hours =
                Asked.rows(Asked.of(engine, asked, Work.alone()).getArray("hours"));
        List<JsonObject> spans = List.of();
        if (request.has("tideMetres") && (request.has("station") || request.has("table"))) {
            JsonObject water = new JsonObject();
            water.put("schema", "tide/1");
            for (String name : List.of("station", "table")) {
                if (request.has(name)) {
                    water.put(name, request.get(name));
                }
            }
            water.put("from", from.toString());
            water.put("to", to.toString());
            JsonObject between = new JsonObject();
            between.put("metres", request.get("tideMetres"));
            if (request.has("tideDirection")) {
                between.put("direction", request.get("tideDirection"));
            }
            water.put("between", between);
            spans = Asked.rows(Asked.of(engine, water, Work.alone()).getArray("spans"));
        }
        return new Weave(first, days, zone, hours, spans, Asked.rows(found), small);
    }

    static double left(double width, double small) {
        return (width < HourAxis.NARROWER_THAN ? 6 : 7.4) * small;
    }

    private double x(LocalDate day, Instant at, double width) {
        double start = zone.start(day).getEpochSecond();
        double end = zone.start(day.plusDays(1)).getEpochSecond();
        double share = Math.max(0, Math.min(1, (at.getEpochSecond() - start) / (end - start)));
        return left(width, small) + share * (width - left(width, small) - 2);
    }

    /** Draws all days, each so high; {@code chosen} is framed. */
    void draw(Drawing to, double width, double rowHeight, LocalDate chosen) {
        double left = left(width, small);
        for (int hour = 0; hour <= 24; hour += width < HourAxis.NARROWER_THAN ? 6 : 3) {
            double x = left + hour / 24.0 * (width - left - 2);
            Hold hold = hour == 0 ? Hold.START : hour == 24 ? Hold.END : Hold.MIDDLE;
            to.text(x, 15, Lettering.of(small, Ink.INK).strong().held(hold), Integer.toString(hour));
        }
        for (int i = 0; i < days; i++) {
            LocalDate day = first.plusDays(i);
            double y = HEAD + i * rowHeight;
            row(to, day, y, width, rowHeight);
            boolean monday = day.getDayOfWeek().getValue() == 1;
            if (i == 0 || monday || day.equals(chosen)) {
                boolean near =
                        !day.equals(chosen) && Math.abs(chosen.toEpochDay() - day.toEpochDay()) * rowHeight < small;
                if (!near) {
                    Lettering type = Lettering.of(small, Ink.INK);
                    to.text(
                            0,
                            y + rowHeight / 2 + small / 3,
                            day.equals(chosen) ? type.strong() : type,
                            DAY.format(day));
                }
            }
        }
        long index = chosen.toEpochDay() - first.toEpochDay();
        if (index >= 0 && index < days) {
            to.frame(left - 1.5, HEAD + index * rowHeight - 1.5, width - left + 1, rowHeight + 2, Ink.INK, 3);
        }
    }

    private void row(Drawing to, LocalDate day, double y, double width, double rowHeight) {
        double left = left(width, small);
        double tall = rowHeight - 1.2;
        to.rect(left, y, width - left - 2, tall, Ink.VEIL);
        Instant start = zone.start(day);
        Instant end = zone.start(day.plusDays(1));
        night(to, day, y, tall, width);
        for (JsonObject span : spans) {
            cut(to, day, span, y + 0.3 * tall, 0.4 * tall, width);
        }
        for (JsonObject window : windows) {
            Instant from = DayPlan.instant(window, "start");
            Instant to1 = DayPlan.instant(window, "end");
            if (to1.isAfter(start) && from.isBefore(end)) {
                double a = x(day, from, width);
                double b = Math.max(a + 4, x(day, to1, width));
                to.rect(a, y, b - a, tall, Ink.LICHEN);
                to.frame(a, y, b - a, tall, Ink.LANE_INK, 1.5);
            }
        }
    }

    /** Darkness in five steps; neighbours of the same step are one. */
    private void night(Drawing to, LocalDate day, double y, double tall, double width) {
        Instant start = zone.start(day);
        Instant end = zone.start(day.plusDays(1));
        long step = 0;
        Instant from = start;
        for (JsonObject hour : hours) {
            Instant at = DayPlan.instant(hour, "time");
            if (at.isBefore(start)) {
                continue;
            }
            boolean over = !at.isBefore(end);
            double altitude = hour.getObject("sun").getDouble("altitude");
            long next = over || altitude > -0.8 ? 0 : Math.round(Math.min(5, 1 - altitude / 3));
            if (next != step || over) {
                double a = x(day, from, width);
                if (step > 0) {
                    to.rect(a, y, x(day, over ? end : at, width) - a, tall, Ink.DARK, step / 5.0);
                }
                step = next;
                from = at;
            }
            if (over) {
                return;
            }
        }
    }

    private void cut(Drawing to, LocalDate day, JsonObject span, double y, double tall, double width) {
        Instant a = DayPlan.instant(span, "from");
        Instant b = DayPlan.instant(span, "to");
        if (b.isAfter(zone.start(day)) && a.isBefore(zone.start(day.plusDays(1)))) {
            double x = x(day, a, width);
            double wide = x(day, b, width) - x;
            to.rect(x, y, wide, tall, Ink.SEA_FILL);
            to.line(x, y + tall, x + wide, y + tall, Ink.SEA, 1.2);
        }
    }
}
