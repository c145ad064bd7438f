package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.plan.WeatherFile;
import ebblight.app.plan.Zone;
import ebblight.core.motion.Clip;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What was measured of one clip or folder, as a row of the memory. */
final class MeasurementRow {

    /** A forecast's wind counts for what was filmed within so much of its time. */
    private static final Duration NEAR = Duration.ofMinutes(90);

    private MeasurementRow() {}

    static JsonObject of(String name, Path input, SurveyRequest survey, JsonObject answer, JsonObject outing, Path root)
            throws IOException {
        JsonObject row = new JsonObject();
        row.put("input", name);
        Instant filmed = filmed(input, survey, outing);
        row.put("filmedAt", filmed.toString());
        for (String field : new String[] {"mode", "frames", "seconds"}) {
            row.put(field, answer.get(field));
        }
        row.put("framesPerSecond", answer.get("fps"));
        row.put("windMetresPerSecond", wind(outing, root, filmed));
        Clip clip = survey.frames().clip();
        byte[] map = survey.blobs().get("regions").orElseGet(() -> new byte[0]);
        if (map.length == clip.width() * clip.height()) {
            row.put("mapWidth", clip.width());
            row.put("mapHeight", clip.height());
            row.put("map", Packed.of(map));
            row.put("sketch", Packed.of(ViewSketch.of(clip).codes()));
        }
        JsonArray parts = new JsonArray();
        int number = 0;
        for (JsonObject region : Asked.rows(answer.getArray("regions"))) {
            parts.add(part(region, number));
            number++;
        }
        row.put("parts", parts);
        return row;
    }

    private static JsonObject part(JsonObject region, int number) {
        JsonObject part = new JsonObject();
        part.put("part", region.getString("id"));
        part.put("number", number);
        part.put("water", water(region));
        for (String field : new String[] {
            "kind",
            "areaFraction",
            "texture",
            "standing",
            "correlationSeconds",
            "wavePeriodSeconds",
            "confidence",
            "resolved"
        }) {
            part.put(field, region.get(field));
        }
        JsonArray predictions = new JsonArray();
        for (JsonObject at : Asked.rows(region.getArray("left", new JsonArray()))) {
            JsonObject one = new JsonObject();
            for (String field : new String[] {"seconds", "left", "low", "high"}) {
                one.put(field, at.get(field));
            }
            predictions.add(one);
        }
        part.put("predictions", predictions);
        return part;
    }

    /** The kind of water, by what was measured of it; null for what does not flow. */
    private static @Nullable String water(JsonObject region) {
        if (!"flowing".equals(region.getString("kind"))) {
            return null;
        }
        if (region.getBoolean("breakers", false)) {
            return Waters.BREAKING;
        }
        if (region.getDouble("standing", 0) >= region.getDouble("texture", 0)) {
            return Waters.RUNNING;
        }
        double period = region.getDouble("wavePeriodSeconds", 0);
        return period >= Waters.SWELL_SECONDS ? Waters.SWELL : period > 0 ? Waters.WIND_WAVES : Waters.UNTOLD;
    }

    private static Instant filmed(Path input, SurveyRequest survey, JsonObject outing) throws IOException {
        Zone zone = Zone.of("zone", outing.getString("zone", "UTC"));
        return survey.source()
                .facts()
                .taken()
                .map(zone::instant)
                .orElse(Files.getLastModifiedTime(input).toInstant());
    }

    /** The forecast's wind when it was filmed, in m/s; null where none is known. */
    private static @Nullable Object wind(JsonObject outing, Path root, Instant at) throws IOException {
        JsonObject plan = outing.getObject("plan", new JsonObject());
        JsonArray rows = plan.getArray("weather", new JsonArray());
        if (plan.isString("weather") && Files.isReadable(root.resolve(plan.getString("weather")))) {
            rows = WeatherFile.read(root.resolve(plan.getString("weather")));
        }
        Duration nearest = NEAR.plusNanos(1);
        @Nullable Object wind = null;
        for (JsonObject row : Asked.rows(rows)) {
            try {
                Duration apart = Duration.between(Instant.parse(row.getString("time", "")), at)
                        .abs();
                if (row.isNumber("windMetresPerSecond") && apart.compareTo(nearest) < 0) {
                    nearest = apart;
                    wind = row.get("windMetresPerSecond");
                }
            } catch (DateTimeException e) {
                // a row without a time that can be read tells nothing
            }
        }
        return wind;
    }
}
