package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.draw.DayPlan;
import ebblight.app.draw.Pictures;
import ebblight.app.draw.Sheet;
import ebblight.app.outing.OutingFolder;
import ebblight.app.plan.PlannedOuting;
import ebblight.app.plan.StationCatalogue;
import ebblight.app.plan.TideTableFile;
import ebblight.app.plan.WeatherFile;
import ebblight.app.plan.WishesFile;
import ebblight.app.plan.Zone;
import ebblight.core.numeric.Work;
import ebblight.core.sky.Place;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** Planning: windows with the day's drawings, the sheet to print, and the search for stations. */
final class PlanRoutes {

    private static final int MOST_STATIONS = 12;
    private static final double NARROWEST = 240;
    private static final double WIDEST = 1600;

    private final OutingFolder folder;
    private final Clock clock;
    private final Engine engine = new Engine();
    private String asked = "";
    private JsonObject found = new JsonObject();

    PlanRoutes(OutingFolder folder, Clock clock) {
        this.folder = folder;
        this.clock = clock;
    }

    void add(Javalin javalin) {
        javalin.get("/api/stations", this::stations);
        javalin.post("/api/plan", this::plan);
        javalin.post("/api/plan/sheet", this::sheet);
        javalin.post("/api/plan/table", this::table);
    }

    /** Rows of a file of waters ({@code waters}) or of a forecast ({@code weather}), read and checked. */
    private void table(Context context) throws IOException {
        JsonObject body = Replies.body(context);
        String name = body.getString("name", "");
        String text = body.getString("text", "");
        boolean waters = "waters".equals(body.getString("kind"));
        JsonArray rows = waters ? TideTableFile.read(name, text) : WeatherFile.read(name, text);
        Asked.of(engine, waters ? water(rows) : air(rows), Work.alone());
        JsonObject answer = new JsonObject();
        answer.put("rows", rows);
        Replies.json(context, answer);
    }

    /** Some question about the waters: two high ones in a row and the like are said when the table is chosen. */
    private static JsonObject water(JsonArray rows) {
        JsonObject request = new JsonObject();
        request.put("schema", "tide/1");
        request.put("from", "2027-01-01T00:00:00Z");
        request.put("to", "2027-01-02T00:00:00Z");
        request.put("table", rows);
        return request;
    }

    /** Some question about the forecast, for the same. */
    private static JsonObject air(JsonArray rows) {
        JsonObject request = new JsonObject();
        request.put("schema", "sky/1");
        request.put("at", "0,0");
        request.put("time", "2027-01-01T00:00:00Z");
        request.put("weather", rows);
        return request;
    }

    /** Stations by a part of their name ({@code q}), or the nearest to a place ({@code at}). */
    private void stations(Context context) throws IOException {
        String at = context.queryParam("at");
        String typed = context.queryParam("q");
        JsonArray rows = new JsonArray();
        Place place = at == null ? null : place(at);
        List<StationCatalogue.Entry> entries = place == null
                ? StationCatalogue.read().search(typed == null ? "" : typed)
                : StationCatalogue.read().nearest(place, MOST_STATIONS / 2);
        for (StationCatalogue.Entry entry : entries.subList(0, Math.min(MOST_STATIONS, entries.size()))) {
            JsonObject row = new JsonObject();
            row.put("id", entry.id());
            row.put("name", entry.name());
            row.put("country", entry.country());
            row.put("at", entry.place().latitudeDegrees() + "," + entry.place().longitudeDegrees());
            row.put("distanceKilometres", place == null ? null : place.kilometresTo(entry.place()));
            rows.add(row);
        }
        JsonObject answer = new JsonObject();
        answer.put("stations", rows);
        answer.put("found", entries.size());
        Replies.json(context, answer);
    }

    private static Place place(String at) {
        try {
            return Place.parse(at);
        } catch (IllegalArgumentException e) {
            throw new RequestException("at", String.valueOf(e.getMessage()));
        }
    }

    /** Windows of one question are kept: turning from day to day asks it again and again. */
    private synchronized JsonObject windows(JsonObject request) {
        String question = JsonWriter.string(request);
        if (!question.equals(asked)) {
            found = Asked.of(engine, request, Work.alone());
            asked = question;
        }
        return found;
    }

    /** A question with what belongs to it. */
    private record Question(JsonObject request, JsonObject answer, Zone zone, DayPlan plan) {}

    private Question question(JsonObject body) throws IOException {
        JsonObject wishes = body.getObject("wishes");
        if (wishes == null) {
            throw new RequestException("wishes", "is missing");
        }
        for (String file : new String[] {"table", "weather"}) {
            if (wishes.isString(file)) {
                folder.inside(wishes.getString(file));
            }
        }
        JsonObject request;
        JsonObject answer;
        Zone zone;
        try {
            request = WishesFile.request(wishes, folder.root());
            answer = windows(request);
            zone = WishesFile.zone(wishes);
        } catch (RequestException e) {
            throw new UsageException(PlannedOuting.said(String.valueOf(e.getMessage())));
        }
        LocalDate day = body.isString("day") ? Zone.day("day", body.getString("day")) : firstDay(answer, zone);
        return new Question(request, answer, zone, DayPlan.ask(engine, request, answer.getArray("windows"), day, zone));
    }

    /** The day of the first window that is not over, falling water first; else today. */
    private LocalDate firstDay(JsonObject answer, Zone zone) {
        Instant now = clock.instant();
        JsonObject best = null;
        for (Object each : answer.getArray("windows")) {
            JsonObject window = (JsonObject) each;
            boolean over = Instant.parse(window.getString("end")).isBefore(now);
            if (!over && (best == null || window.getInt("rank") < best.getInt("rank"))) {
                best = window;
            }
        }
        return zone.date(Instant.parse(best == null ? answer.getString("from") : best.getString("start")));
    }

    private static double width(JsonObject body, String field, double otherwise) {
        return Math.max(NARROWEST, Math.min(WIDEST, body.getDouble(field, otherwise)));
    }

    private void plan(Context context) throws IOException {
        JsonObject body = Replies.body(context);
        Question asked = question(body);
        DayPlan plan = asked.plan();
        double width = width(body, "width", 800);
        double small = Math.max(Pictures.SMALL, Math.min(24, body.getDouble("small", Pictures.SMALL)));
        LocalDate first = asked.zone().date(Instant.parse(asked.answer().getString("from")));
        LocalDate last =
                asked.zone().date(Instant.parse(asked.answer().getString("to")).minusSeconds(1));
        JsonObject whole = new JsonObject();
        whole.put("answer", asked.answer());
        whole.put("day", plan.day().toString());
        whole.put("from", plan.from().toString());
        whole.put("to", plan.to().toString());
        whole.put("moments", plan.moments());
        whole.put("polar", plan.sky().getObject("events").get("polar"));
        JsonObject pictures = new JsonObject();
        pictures.put(
                "weave",
                Pictures.weave(
                        engine,
                        asked.request(),
                        asked.answer().getArray("windows"),
                        asked.zone(),
                        first,
                        last.plusDays(1),
                        plan.day(),
                        width,
                        small));
        pictures.put("strip", Pictures.strip(plan, width, small, true));
        pictures.put(
                "lens",
                Pictures.lens(plan, width(body, "lensWidth", 480), small, true).orElse(null));
        whole.put("pictures", pictures);
        Replies.json(context, whole);
    }

    private void sheet(Context context) throws IOException {
        JsonObject body = Replies.body(context);
        Question asked = question(body);
        byte[] pdf =
                Sheet.pdf(asked.plan(), asked.answer(), body.getObject("wishes").getString("name", ""));
        context.header("Cache-Control", "no-store");
        context.header(
                "Content-Disposition",
                "attachment; filename=\"plan-" + asked.plan().day() + ".pdf\"");
        context.contentType("application/pdf");
        context.result(pdf);
    }
}
