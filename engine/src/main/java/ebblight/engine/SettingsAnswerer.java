package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.Camera;
import ebblight.core.exposure.ChangingLight;
import ebblight.core.exposure.Choice;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.MeterReading;
import ebblight.core.exposure.Reach;
import ebblight.core.exposure.Reciprocity;
import ebblight.core.exposure.SettingsAnswer;
import ebblight.core.exposure.SettingsRequest;
import ebblight.core.exposure.SettingsSolver;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.exposure.ThirdStops;
import ebblight.core.exposure.WayOut;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Work;
import ebblight.core.optics.DepthOfField;
import java.util.List;
import java.util.Optional;

/** Answers {@code settings/1}: ranked ways to reach a shutter time. */
final class SettingsAnswerer implements Engine.Answerer {

    private static final double BRIGHT_EXPOSURE_VALUE = 10;

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields fields = new Fields(json, "");
        SettingsRequest request = Checked.of("settings", () -> request(fields));
        SettingsAnswer solved = SettingsSolver.solve(request);
        JsonArray choices = new JsonArray();
        for (Choice choice : solved.choices()) {
            choices.add(choice(choice, request, solved.exposureValue100()));
        }
        JsonArray ways = new JsonArray();
        for (WayOut way : solved.ways()) {
            JsonObject one = new JsonObject();
            one.put("kind", way.kind().word());
            one.put("stops", Json.number(way.stops()));
            one.put("text", way.words());
            ways.add(one);
        }
        JsonObject answer = new JsonObject();
        answer.put("exposureValue100", solved.exposureValue100());
        answer.put("fromSeconds", request.fromSeconds());
        answer.put("toSeconds", request.toSeconds());
        answer.put("choices", choices);
        answer.put("ways", ways);
        answer.put("reach", reach(solved, request));
        answer.put("timedLimitSeconds", request.camera().timedLimitSeconds());
        answer.put("longestEquivalentSeconds", Json.number(request.light().longestEquivalentSeconds()));
        return answer;
    }

    private static JsonArray reach(SettingsAnswer solved, SettingsRequest request) {
        JsonArray array = new JsonArray();
        for (Reach reach : solved.reach()) {
            JsonObject one = new JsonObject();
            one.put("filters", BagFields.names(reach.filters()));
            one.put("fNumber", ThirdStops.fNominal(reach.fNumber()));
            one.put("seconds", reach.seconds());
            one.put("correctedSeconds", Json.number(request.light().openFor(reach.seconds())));
            array.add(one);
        }
        return array;
    }

    /** A reading as typed, or the light itself as an exposure value: f/1, ISO 100 and the time that goes with it. */
    private static MeterReading meter(Fields fields) {
        if (fields.has("exposureValue100") && !fields.has("meter")) {
            double value = fields.number("exposureValue100");
            return Checked.of("exposureValue100", () -> new MeterReading(1, Powers.exp2(-value), 100));
        }
        return Checked.of("meter", () -> MeterReading.parse(fields.text("meter")));
    }

    private static SettingsRequest request(Fields fields) {
        MeterReading meter = meter(fields);
        double from;
        double to;
        if (fields.has("time")) {
            if (fields.has("from") || fields.has("to")) {
                throw new RequestException("time", "give either one time or a range from … to, not both");
            }
            from = Checked.of("time", () -> ShutterTime.parse(fields.text("time")));
            to = from;
        } else if (fields.has("from") && fields.has("to")) {
            from = Checked.of("from", () -> ShutterTime.parse(fields.text("from")));
            to = Checked.of("to", () -> ShutterTime.parse(fields.text("to")));
            if (to < from) {
                throw new RequestException("to", "must not be shorter than from");
            }
        } else {
            throw new RequestException("time", "is missing: give one time, or a range from … to");
        }
        Optional<SettingsRequest.Depth> depth = Optional.empty();
        if (fields.has("nearestMetres")) {
            double nearest = fields.number("nearestMetres");
            double farthest = fields.number("farthestMetres", Double.POSITIVE_INFINITY);
            depth = Optional.of(Checked.of(
                    nearest > 0 ? "farthestMetres" : "nearestMetres",
                    () -> new SettingsRequest.Depth(nearest, farthest)));
        }
        List<Filter> bag = BagFields.read(fields);
        return new SettingsRequest(
                meter,
                fields.number("biasStops", 0, -SettingsRequest.MOST_BIAS_STOPS, SettingsRequest.MOST_BIAS_STOPS),
                from,
                to,
                bag,
                fields.whole("maxStack", 2, 0, SettingsRequest.MOST_STACKED),
                fields.has("camera") ? CameraFields.read(fields.part("camera")) : Camera.standard(),
                Checked.of("fadingStopsPerMinute", () -> new ChangingLight(fields.number("fadingStopsPerMinute", 0))),
                Checked.of("reciprocityExponent", () -> new Reciprocity(fields.number("reciprocityExponent", 1))),
                depth);
    }

    private static JsonObject choice(Choice choice, SettingsRequest request, double exposureValue) {
        JsonObject one = new JsonObject();
        one.put("filters", BagFields.names(choice.filters()));
        one.put("stops", choice.stops());
        one.put("fNumber", ThirdStops.fNominal(choice.fNumber()));
        one.put("exactFNumber", choice.fNumber());
        one.put("iso", ThirdStops.isoNominal(choice.iso()));
        one.put("exactIso", choice.iso());
        one.put("seconds", choice.seconds());
        one.put("correctedSeconds", choice.correctedSeconds());
        one.put("dial", choice.dial());
        one.put("shutter", choice.timed() ? "timed" : "bulb");
        one.put("busySeconds", choice.busySeconds());
        Optional<DepthOfField> depth = choice.depth();
        one.put("focusMetres", depth.map(d -> Json.number(d.focusMetres())).orElse(null));
        one.put("nearMetres", depth.map(d -> Json.number(d.nearMetres())).orElse(null));
        one.put("farMetres", depth.map(d -> Json.number(d.farMetres())).orElse(null));
        JsonArray costs = new JsonArray();
        JsonArray cautions = new JsonArray();
        for (Choice.Cost cost : choice.costs()) {
            JsonObject entry = new JsonObject();
            entry.put("stops", cost.stops());
            entry.put("text", cost.words());
            costs.add(entry);
            cautions.add(cost.words());
        }
        if (request.camera().opticalFinder() && choice.stops() >= 6 && exposureValue >= BRIGHT_EXPOSURE_VALUE) {
            cautions.add("cover the eyepiece of an optical finder");
        }
        one.put("costs", costs);
        one.put("cautions", cautions);
        one.put("errorStops", choice.errorStops());
        one.put("errorRangeStops", choice.errorRangeStops());
        return one;
    }
}
