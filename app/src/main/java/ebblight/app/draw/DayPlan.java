package ebblight.app.draw;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.plan.Zone;
import ebblight.core.numeric.Work;
import ebblight.core.sky.CameraView;
import ebblight.engine.Engine;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One day at a place as it is drawn: where sun and moon stand, how light it is and how high the water is, every five
 * minutes; its windows; what was wished.
 *
 * @param sky the day's {@code sky/1}
 * @param tide its {@code tide/1}, when there is water
 * @param hours rows of the sky every five minutes
 * @param windows those of {@code when/1} that touch the day
 * @param wishes the request they answer
 */
public record DayPlan(
        LocalDate day,
        Zone zone,
        Instant from,
        Instant to,
        JsonObject sky,
        Optional<JsonObject> tide,
        List<JsonObject> hours,
        List<JsonObject> windows,
        JsonObject wishes) {

    private static final int STEP_SECONDS = 300;

    /**
     * Asks for the day.
     *
     * @param request {@code when/1} as it was asked
     * @param found its windows
     */
    public static DayPlan ask(Engine engine, JsonObject request, JsonArray found, LocalDate day, Zone zone) {
        Instant from = zone.start(day);
        Instant to = zone.start(day.plusDays(1));
        JsonObject asked = new JsonObject();
        for (String name : List.of("at", "elevationMetres", "cloud", "weather", "meter", "view", "skylineDegrees")) {
            if (request.has(name)) {
                asked.put(name, request.get(name));
            }
        }
        asked.put("from", from.toString());
        asked.put("to", to.toString());
        asked.put("everySeconds", STEP_SECONDS);
        asked.put("schema", "sky/1");
        JsonObject sky = Asked.of(engine, asked, Work.alone());
        Optional<JsonObject> tide = Optional.empty();
        if (request.has("station") || request.has("table")) {
            JsonObject water = new JsonObject();
            for (String name : List.of("at", "station", "table")) {
                if (request.has(name)) {
                    water.put(name, request.get(name));
                }
            }
            water.put("from", from.toString());
            water.put("to", to.toString());
            water.put("everySeconds", STEP_SECONDS);
            water.put("schema", "tide/1");
            tide = Optional.of(Asked.of(engine, water, Work.alone()));
        }
        List<JsonObject> windows = new ArrayList<>();
        for (JsonObject window : Asked.rows(found)) {
            if (instant(window, "end").isAfter(from) && instant(window, "start").isBefore(to)) {
                windows.add(window);
            }
        }
        return new DayPlan(day, zone, from, to, sky, tide, Asked.rows(sky.getArray("hours")), windows, request);
    }

    static Instant instant(JsonObject row, String field) {
        return Instant.parse(row.getString(field));
    }

    /** Share of the day that has gone by, 0 to 1. */
    double share(Instant at) {
        return (double) (at.getEpochSecond() - from.getEpochSecond()) / (to.getEpochSecond() - from.getEpochSecond());
    }

    /** A wished range, when there is one. */
    Optional<double[]> wished(String name) {
        return wishes.get(name) instanceof JsonArray range && range.size() == 2
                ? Optional.of(new double[] {range.getDouble(0), range.getDouble(1)})
                : Optional.empty();
    }

    /** What the lens looks at, when it was told. */
    Optional<CameraView> view() {
        JsonObject view = sky.getObject("view");
        if (view == null) {
            return Optional.empty();
        }
        JsonArray sensor = view.getArray("sensorMillimetres");
        return Optional.of(new CameraView(
                view.getDouble("azimuth"),
                view.getDouble("altitude"),
                view.getDouble("focalMillimetres"),
                sensor.getDouble(0),
                sensor.getDouble(1)));
    }

    /** What a cursor over the day reads: one row every five minutes; x and y in millimetres on the sensor, or null. */
    public JsonArray moments() {
        Optional<CameraView> view = view();
        List<JsonObject> heights =
                tide.map(t -> Asked.rows(t.getArray("heights"))).orElse(List.of());
        JsonArray moments = new JsonArray();
        for (int i = 0; i < hours.size(); i++) {
            JsonObject hour = hours.get(i);
            JsonObject moment = new JsonObject();
            moment.put("time", hour.getString("time"));
            moment.put("ev100", hour.getDouble("exposureValue100"));
            for (String name : List.of("sun", "moon")) {
                JsonObject body = hour.getObject(name);
                JsonObject one = new JsonObject();
                one.put("altitude", body.getDouble("altitude"));
                one.put("azimuth", body.getDouble("azimuth"));
                view.map(v -> v.spot(body.getDouble("azimuth"), body.getDouble("altitude")))
                        .filter(CameraView.Spot::inFront)
                        .ifPresent(spot -> {
                            one.put("x", spot.xMillimetres());
                            one.put("y", spot.yMillimetres());
                        });
                moment.put(name, one);
            }
            if (i < heights.size()) {
                moment.put("heightMetres", heights.get(i).get("heightMetres"));
                moment.put("risingMetresPerHour", heights.get(i).get("risingMetresPerHour"));
            }
            moments.add(moment);
        }
        return moments;
    }

    /** An event of the day, when it comes. */
    Optional<Instant> event(String name) {
        String at = sky.getObject("events").getString(name);
        return at == null ? Optional.empty() : Optional.of(Instant.parse(at));
    }
}
