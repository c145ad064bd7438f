package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.light.LightModel;
import ebblight.core.light.LightTimes;
import ebblight.core.numeric.Epoch;
import ebblight.core.numeric.Work;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Ephemeris;
import ebblight.core.sky.Horizontal;
import ebblight.core.sky.MoonPhase;
import ebblight.core.sky.Place;
import ebblight.core.sky.Sky;
import ebblight.core.sky.SkyEvent;
import ebblight.core.sky.SkyEvents;
import ebblight.core.sky.TabulatedEphemeris;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Answers {@code sky/1}: sun, moon, events and light. {@code time} asks about an instant and the events of the 24 hours
 * after it; {@code from} and {@code to} about a day, whose middle stands for it. An exposure whose {@code openSeconds}
 * are settled is only asked for what enters the picture meanwhile.
 */
final class SkyAnswerer implements Engine.Answerer {

    private static final double DAY_SECONDS = 86_400;
    private static final double LONGEST_SECONDS = 40 * DAY_SECONDS;

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields fields = new Fields(json, "");
        Place place = PlaceFields.place(fields);
        Span span = span(fields);
        double from = Epoch.seconds(span.from());
        double to = Epoch.seconds(span.to());
        double at = Epoch.seconds(span.at());
        Sky exact = new Sky(place, Ephemeris.computed());
        Sky sky = new Sky(place, new TabulatedEphemeris(from - DAY_SECONDS, to + DAY_SECONDS));
        LightModel light = LightFields.model(fields, exact);
        double skyline = fields.number("skylineDegrees", 0, 0, 89);

        JsonObject answer = new JsonObject();
        answer.put("at", place.latitudeDegrees() + "," + place.longitudeDegrees());
        answer.put("time", Instants.write(span.at()));
        answer.put("sun", body(exact.sun(at)));
        answer.put("moon", moon(exact, at));
        answer.put("eventsFrom", Instants.write(span.from()));
        answer.put("eventsTo", Instants.write(span.to()));
        answer.put("events", events(SkyEvents.between(sky, span.from(), span.to())));
        putLight(answer, light, at);
        LightModel tabulated = new LightModel(sky, light.cloud(), light.offsetStops(), light.metered());
        if (fields.has("everySeconds")) {
            answer.put("hours", hours(sky, tabulated, from, to, step(fields, from, to)));
        }
        Optional<CameraView> view = PlaceFields.view(fields);
        if (view.isPresent()) {
            OptionalDouble wind = fields.has("windMetresPerSecond")
                    ? OptionalDouble.of(fields.number("windMetresPerSecond"))
                    : OptionalDouble.empty();
            answer.put("view", ViewAnswer.of(view.get(), exact, sky, skyline, at, from, to, wind));
        }
        if (fields.has("exposure")) {
            Fields part = fields.part("exposure");
            boolean settled = part.has("openSeconds");
            JsonObject exposure = settled && !part.has("seconds")
                    ? new JsonObject()
                    : exposure(part, tabulated, fields.has("time"), new double[] {from, at, to});
            double open =
                    settled ? part.number("openSeconds", 0, 0, DAY_SECONDS) : exposure.getDouble("openSeconds", 0);
            JsonArray entering = view.isPresent() && open > 0
                    ? ViewAnswer.entering(view.get(), exact, skyline, at, at + open)
                    : new JsonArray();
            exposure.put("entering", entering);
            answer.put("exposure", exposure);
        }
        return answer;
    }

    /** What is asked about: an instant, and the span in which events are sought. */
    private record Span(Instant at, Instant from, Instant to) {}

    private static Span span(Fields fields) {
        if (fields.has("time")) {
            Instant time = Instants.read(fields, "time");
            return new Span(time, time, time.plusSeconds((long) DAY_SECONDS));
        }
        if (!fields.has("from") || !fields.has("to")) {
            throw new RequestException("time", "is missing: give an instant, or from and to of a day");
        }
        Instant from = Instants.read(fields, "from");
        Instant to = Instants.read(fields, "to");
        double seconds = Epoch.seconds(to) - Epoch.seconds(from);
        if (!(seconds > 0 && seconds <= LONGEST_SECONDS)) {
            throw new RequestException("to", "must come after from, at most 40 days later");
        }
        return new Span(Epoch.instant(Epoch.seconds(from) + seconds / 2), from, to);
    }

    private static double step(Fields fields, double from, double to) {
        double step = fields.number("everySeconds");
        if (!(step >= 60 && (to - from) / step <= 20_000)) {
            throw new RequestException(
                    "everySeconds", "must be at least 60 s and give at most 20 000 rows, was " + step);
        }
        return step;
    }

    static JsonObject body(Horizontal body) {
        JsonObject one = new JsonObject();
        one.put("azimuth", body.azimuthDegrees());
        one.put("altitude", body.apparentAltitudeDegrees());
        one.put("altitudeAirless", body.altitudeDegrees());
        one.put("kilometres", body.kilometres());
        return one;
    }

    private static JsonObject moon(Sky sky, double at) {
        JsonObject one = body(sky.moon(at));
        MoonPhase phase = MoonPhase.at(sky.ephemeris(), at);
        one.put("phase", phase.elongationDegrees());
        one.put("fraction", phase.fraction());
        one.put("phaseName", phase.words());
        return one;
    }

    private static JsonObject events(SkyEvents events) {
        JsonObject all = new JsonObject();
        for (SkyEvent event : SkyEvent.values()) {
            all.put(event.word(), events.instant(event).map(Instants::write).orElse(null));
        }
        all.put("polar", events.polar().map(SkyEvents.Polar::word).orElse(null));
        return all;
    }

    private static void putLight(JsonObject answer, LightModel light, double at) {
        answer.put("illuminanceLux", light.lux(at));
        answer.put("exposureValue100", light.exposureValue100(at));
        answer.put("exposureValue100RangeStops", light.rangeStops(at));
        answer.put("fadingStopsPerMinute", light.fadingStopsPerMinute(at));
        answer.put("cloud", light.cloud().word());
        answer.put("metered", light.metered());
        answer.put("meterOffsetStops", light.metered() ? Json.number(light.offsetStops()) : null);
    }

    private static JsonArray hours(Sky sky, LightModel light, double from, double to, double step) {
        JsonArray rows = new JsonArray();
        for (double t = from; t <= to; t += step) {
            JsonObject row = new JsonObject();
            row.put("time", Instants.write(Epoch.instant(t)));
            row.put("sun", body(sky.sun(t)));
            row.put("moon", body(sky.moon(t)));
            row.put("exposureValue100", light.exposureValue100(t));
            rows.add(row);
        }
        return rows;
    }

    /**
     * When the light is right for a time behind filters: after an instant, or on the evening and on the morning of a day;
     * and from an instant on, how long to hold it open while the light changes.
     *
     * @param span its start, the instant or the middle of the day, its end
     */
    private static JsonObject exposure(Fields fields, LightModel light, boolean now, double[] span) {
        double seconds = fields.number("seconds");
        double stops = fields.number("filterStops", 0);
        double wanted = Checked.of(
                fields.path("seconds"),
                () -> LightTimes.wantedExposureValue100(
                        fields.number("fNumber"), seconds, fields.number("iso", 100), stops));
        JsonObject one = new JsonObject();
        one.put("wantedExposureValue100", wanted);
        one.put("darkEnough", instant(LightTimes.darkEnough(light, span[1], span[2], wanted)));
        one.put("brightEnough", instant(LightTimes.brightEnough(light, span[0], now ? span[2] : span[1], wanted)));
        one.put("openSeconds", now ? Json.number(LightTimes.openSeconds(light, span[1], seconds)) : null);
        return one;
    }

    private static @Nullable String instant(OptionalDouble epochSeconds) {
        return epochSeconds.isPresent() ? Instants.write(Epoch.instant(epochSeconds.getAsDouble())) : null;
    }
}
