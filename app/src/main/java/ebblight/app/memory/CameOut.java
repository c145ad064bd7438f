package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.core.motion.Clip;
import ebblight.core.motion.LeftSeen;
import ebblight.core.numeric.Work;
import ebblight.imaging.Inputs;
import ebblight.imaging.SurveyReader;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What came out of a shutter time, held against what was predicted for it from other frames of the same view. What is
 * left of the texture is measured in the picture as {@link LeftSeen} does.
 */
final class CameOut {

    /** A view is the same from here on; other views of one coast stay below half of it. */
    private static final double SAME_VIEW = 0.6;
    /** The shortest time that is predicted. */
    private static final double SHORTEST_SECONDS = 0.125;

    private static final double MOST_CLIPPED = 0.05;
    private static final double LEAST_SHARPNESS = 0.7;
    /** Gaps of more than this share make a stack another thing than one exposure. */
    private static final double MOST_GAPS = 0.1;

    private static final int MOST_FRAMES = 60;
    private static final double LEAST_AREA = 0.01;

    private final Path root;
    private final List<Measured> measurements = new ArrayList<>();

    private record Measured(JsonObject row, Path input, int width, int height, byte[] map, ViewSketch sketch) {}

    CameOut(Path root, JsonObject outing) {
        this.root = root;
        for (JsonObject row : Asked.rows(outing.getArray("measurements", new JsonArray()))) {
            int width = row.getInt("mapWidth", 0);
            int height = row.getInt("mapHeight", 0);
            if (width > 0 && height > 0) {
                int sketched = ViewSketch.WIDTH * ViewSketch.height(width, height);
                byte[] map = Packed.open(row.getString("map", ""), width * height);
                byte[] sketch = Packed.open(row.getString("sketch", ""), sketched);
                if (map.length > 0 && sketch.length > 0) {
                    Path input = root.resolve(row.getString("input"));
                    measurements.add(new Measured(row, input, width, height, map, new ViewSketch(sketch)));
                }
            }
        }
    }

    /** A stacked mean as a row with its outcomes; empty where nothing was predicted of it. */
    Optional<JsonObject> ofStack(Path result, List<Path> sources, JsonObject answer, Work work) throws IOException {
        double seconds = answer.getDouble("seconds");
        JsonObject gaps = answer.getObject("gaps", new JsonObject());
        if (gaps.getDouble("seconds", 0) > MOST_GAPS * seconds) {
            return Optional.empty();
        }
        JsonArray outcomes = outcomes(result, sources, seconds, work);
        return outcomes.isEmpty()
                ? Optional.empty()
                : Optional.of(row(result, "stack", seconds, answer.getInt("frames", 1), outcomes));
    }

    /** The long exposures of a card that are sharp and not clipped. */
    JsonArray ofFrames(Path card, JsonObject sorted, Work work) throws IOException {
        JsonArray rows = new JsonArray();
        if (measurements.isEmpty()) {
            return rows;
        }
        for (JsonObject group : Asked.rows(sorted.getArray("groups"))) {
            for (JsonObject frame : Asked.rows(group.getArray("frames"))) {
                double seconds = frame.getDouble("exposureSeconds", 0);
                String role = frame.getString("role", "");
                boolean one = role.equals("filtered") || role.equals("variant");
                boolean sound = frame.getDouble("fixedSharpness", 0) >= LEAST_SHARPNESS
                        && frame.getDouble("clippedFraction", 1) <= MOST_CLIPPED;
                if (one && sound && seconds >= SHORTEST_SECONDS && rows.size() < MOST_FRAMES) {
                    Path file = card.resolve(frame.getString("file"));
                    work.check();
                    JsonArray outcomes = outcomes(file, List.of(file), seconds, work);
                    if (!outcomes.isEmpty()) {
                        rows.add(row(file, "frame", seconds, 1, outcomes));
                    }
                }
            }
        }
        return rows;
    }

    private JsonObject row(Path result, String command, double seconds, int frames, JsonArray outcomes) {
        JsonObject row = new JsonObject();
        row.put("file", Remembered.relative(root, result));
        row.put("command", command);
        row.put("seconds", seconds);
        row.put("frames", frames);
        row.put("outcomes", outcomes);
        return row;
    }

    private JsonArray outcomes(Path picture, List<Path> sources, double seconds, Work work) throws IOException {
        JsonArray outcomes = new JsonArray();
        List<Measured> others = measurements.stream()
                .filter(m -> sources.stream().noneMatch(s -> s.toAbsolutePath().startsWith(m.input)))
                .toList();
        if (others.isEmpty()) {
            return outcomes;
        }
        Clip seen;
        try {
            seen = SurveyReader.first(Inputs.open(List.of(picture), 0, false), SurveyReader.SURVEY_WIDTH, work)
                    .clip();
        } catch (UnreadableInputException e) {
            return outcomes; // what cannot be read as a frame shows nothing
        }
        float[] luminance = new float[seen.width() * seen.height()];
        seen.luminance(0, luminance);
        ViewSketch sketch = ViewSketch.of(luminance, seen.width(), seen.height());
        Optional<Measured> found = Optional.empty();
        double best = SAME_VIEW;
        for (Measured each : others) {
            boolean shape = each.width == seen.width() && each.height == seen.height();
            double likeness = shape ? each.sketch.likeness(sketch) : 0;
            if (likeness > best) {
                best = likeness;
                found = Optional.of(each);
            }
        }
        if (found.isPresent()) {
            for (JsonObject part : Asked.rows(found.get().row.getArray("parts"))) {
                if (part.getDouble("areaFraction", 0) >= LEAST_AREA) {
                    outcome(found.get(), part, luminance, seconds).ifPresent(outcomes::add);
                }
            }
        }
        return outcomes;
    }

    private static Optional<JsonObject> outcome(Measured from, JsonObject part, float[] luminance, double seconds) {
        List<JsonObject> predictions = Asked.rows(part.getArray("predictions", new JsonArray()));
        for (int k = 0; k + 1 < predictions.size(); k++) {
            JsonObject before = predictions.get(k);
            JsonObject after = predictions.get(k + 1);
            if (before.getDouble("seconds") <= seconds && seconds <= after.getDouble("seconds")) {
                double share = Math.log(seconds / before.getDouble("seconds"))
                        / Math.log(after.getDouble("seconds") / before.getDouble("seconds"));
                float[] mask = new float[luminance.length];
                for (int p = 0; p < mask.length; p++) {
                    mask[p] = (from.map[p] & 0xFF) == part.getInt("number") ? 1 : 0;
                }
                JsonObject one = new JsonObject();
                one.put("part", part.getString("part"));
                one.put("kind", part.getString("kind"));
                one.put("water", part.get("water"));
                one.put("windMetresPerSecond", from.row.get("windMetresPerSecond"));
                one.put("predictedFrom", from.row.getString("input"));
                one.put("predicted", between(before, after, "left", share));
                one.put("low", between(before, after, "low", share));
                one.put("high", between(before, after, "high", share));
                one.put("cameOut", LeftSeen.of(luminance, from.width, from.height, mask));
                one.put("resolved", part.get("resolved"));
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** Along the curve, which is nearly straight in logarithms. */
    private static double between(JsonObject before, JsonObject after, String field, double share) {
        double a = Math.max(1e-6, before.getDouble(field));
        double b = Math.max(1e-6, after.getDouble(field));
        return Math.exp((1 - share) * Math.log(a) + share * Math.log(b));
    }
}
