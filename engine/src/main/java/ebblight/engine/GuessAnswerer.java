package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;
import ebblight.core.outing.CloudLayer;
import ebblight.core.outing.FirstGuess;
import ebblight.core.outing.WindSea;
import ebblight.core.sky.CameraView;
import java.util.List;
import java.util.Optional;

/**
 * Answers {@code guess/1}: shutter times before any clip, from {@code windMetresPerSecond} or {@code swellSeconds}, and
 * from {@code layer} (low, middle, high) or {@code cloudBaseMetres} with {@code cloudWindMetresPerSecond} and a view.
 */
final class GuessAnswerer implements Engine.Answerer {

    private static final String MARK = "a guess from wind and cloud alone; a clip of ten seconds replaces it";

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        JsonObject answer = of(new Fields(json, ""), PlaceFields.view(new Fields(json, "")));
        if (answer.isNull("water") && answer.isNull("cloud")) {
            throw new RequestException("windMetresPerSecond", "is missing: give wind, swell or a layer of cloud");
        }
        return answer;
    }

    static JsonObject of(Fields fields, Optional<CameraView> view) {
        JsonObject answer = new JsonObject();
        answer.put("mark", MARK);
        answer.put("water", water(fields).orElse(null));
        answer.put("cloud", cloud(fields, view).orElse(null));
        return answer;
    }

    private static Optional<JsonObject> water(Fields fields) {
        JsonObject water = new JsonObject();
        double period;
        if (fields.has("swellSeconds")) {
            period = fields.number("swellSeconds");
            water.put("from", "swell");
        } else if (fields.has("windMetresPerSecond")) {
            WindSea sea = Checked.of(
                    fields.path("windMetresPerSecond"), () -> new WindSea(fields.number("windMetresPerSecond")));
            period = sea.periodSeconds();
            water.put("from", "wind");
            water.put("heightMetres", sea.heightMetres());
        } else {
            return Optional.empty();
        }
        water.put("periodSeconds", period);
        water.put("limits", limits(Checked.of(fields.path("swellSeconds"), () -> FirstGuess.water(period))));
        return Optional.of(water);
    }

    private static Optional<JsonObject> cloud(Fields fields, Optional<CameraView> view) {
        boolean typed = fields.has("cloudBaseMetres");
        if (!typed && !fields.has("layer")) {
            return Optional.empty();
        }
        CloudLayer layer = typed
                ? Checked.of(
                        fields.path("cloudBaseMetres"),
                        () -> new CloudLayer(
                                fields.number("cloudBaseMetres"), fields.number("cloudWindMetresPerSecond")))
                : Checked.of(fields.path("layer"), () -> CloudLayer.Usual.of(fields.text("layer")));
        CameraView through = view.orElseThrow(
                () -> new RequestException(fields.path("view"), "is missing: how fast clouds go depends on the lens"));
        JsonObject cloud = new JsonObject();
        cloud.put("baseMetres", layer.baseMetres());
        cloud.put("windMetresPerSecond", layer.windMetresPerSecond());
        cloud.put("limits", limits(FirstGuess.cloud(layer, through)));
        return Optional.of(cloud);
    }

    private static JsonArray limits(List<FirstGuess.Limit> limits) {
        JsonArray rows = new JsonArray();
        for (FirstGuess.Limit limit : limits) {
            JsonObject row = new JsonObject();
            row.put("word", limit.word());
            row.put("until", limit.until());
            row.put("seconds", Json.number(limit.seconds()));
            row.put("low", Json.number(limit.low()));
            row.put("high", Json.number(limit.high()));
            row.put("text", words(limit));
            rows.add(row);
        }
        return rows;
    }

    private static String words(FirstGuess.Limit limit) {
        if (!Double.isFinite(limit.seconds())) {
            return limit.word() + (limit.until() ? " at any time" : " at no time");
        }
        return limit.word() + (limit.until() ? " up to about " : " from about ")
                + ShutterTime.words(round(limit.seconds()))
                + " (likely " + ShutterTime.words(round(limit.low())) + " to " + ShutterTime.words(round(limit.high()))
                + ")";
    }

    /** Two figures: a guess has no more. */
    private static double round(double seconds) {
        double step = seconds >= 100 ? 10 : seconds >= 10 ? 1 : seconds >= 1 ? 0.1 : 0.01;
        return Math.max(step, Rounding.even(seconds / step) * step);
    }
}
