package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.core.exposure.MeterReading;
import ebblight.core.exposure.ThirdStops;
import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The {@code outing.json} of the demo: wishes set, a reading just taken, so that the app opens ready to touch. */
final class DemoDocument {

    /** Where the page's dials begin: f/1, 1/8000 s (39 thirds below 1 s), ISO 25 (6 thirds below 100). */
    private static final int FIRST_TIME = -39;

    private static final int FIRST_ISO = -6;
    private static final Map<String, String> KINDS =
            Map.of("water", "flowing", "cloud", "drifting", "branch", "swaying", "rock", "fixed");

    private DemoDocument() {}

    /**
     * Writes it.
     *
     * @param measured answer of {@code measure/1} about the clip
     * @param strokes lines that correct the clip's parts, as strokes/1 holds them
     * @param wishes as typed, such as {@code water=silky}
     * @param meter reading without filters
     */
    static void write(
            Path folder,
            JsonObject measured,
            JsonArray strokes,
            List<String> wishes,
            String meter,
            double fadingPerMinute,
            Clock clock)
            throws IOException {
        JsonObject byId = new JsonObject();
        for (String wish : wishes) {
            String part = wish.substring(0, wish.indexOf('='));
            String word = wish.substring(wish.indexOf('=') + 1);
            largest(measured, String.valueOf(KINDS.get(part)))
                    .forEach(id -> byId.put(id, part.equals("rock") ? "still" : word));
        }
        JsonArray views = new JsonArray();
        JsonObject clip = view("view-1", "The evening, clip", "clip.mp4", byId);
        clip.put("strokes", strokes);
        views.add(clip);
        views.add(view("view-2", "The evening, burst", "burst", null));
        JsonObject light = new JsonObject();
        light.put("readings", new JsonArray(List.of(reading(meter, clock))));
        light.put("stopsPerMinute", Math.round(100 * fadingPerMinute) / 100.0);
        JsonObject outing = new JsonObject();
        outing.put("schema", "outing/1");
        outing.put("revision", 1);
        outing.put("name", "An invented evening");
        outing.put("zone", "UTC");
        outing.put("views", views);
        outing.put("light", light);
        outing.put("log", new JsonArray());
        OutputFile.write(folder.resolve("outing.json"), (Asked.print(outing) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> largest(JsonObject measured, String kind) {
        for (Object one : measured.getArray("regions")) {
            if (one instanceof JsonObject region && kind.equals(region.getString("kind"))) {
                return List.of(region.getString("id"));
            }
        }
        return List.of();
    }

    private static JsonObject view(String id, String name, String frames, @Nullable JsonObject wishes) {
        JsonObject view = new JsonObject();
        view.put("id", id);
        view.put("name", name);
        view.put("frames", frames);
        view.put("nearestMetres", 2);
        if (wishes != null) {
            view.put("wishes", wishes);
        }
        return view;
    }

    private static JsonObject reading(String meter, Clock clock) {
        MeterReading read = MeterReading.parse(meter);
        JsonObject dials = new JsonObject();
        dials.put("fNumber", ThirdStops.fStep(read.fNumber()));
        dials.put("time", ThirdStops.timeStep(read.seconds()) - FIRST_TIME);
        dials.put("iso", ThirdStops.isoStep(read.iso()) - FIRST_ISO);
        JsonObject one = new JsonObject();
        one.put("dials", dials);
        one.put("meter", meter);
        one.put("at", clock.instant().truncatedTo(ChronoUnit.SECONDS).toString());
        return one;
    }
}
