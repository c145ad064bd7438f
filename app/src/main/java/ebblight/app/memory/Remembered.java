package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.kit.DataFolder;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * An outing as the memory sees it: what happens in its folder is written down by one of the verbs. What lies in no outing
 * is not remembered, and work that succeeded does not fail because its memory could not be kept.
 */
public final class Remembered {

    private static final String OUTING = "outing.json";
    private static final int HIGHEST = 4;

    private final Path root;
    private final JsonObject outing;

    private Remembered(Path root, JsonObject outing) {
        this.root = root;
        this.outing = outing;
    }

    /** The outing in whose folder, or in a folder of it, {@code file} lies. */
    public static Optional<Remembered> around(Path file) throws IOException {
        Path folder = Files.isDirectory(file)
                ? file.toRealPath()
                : file.toAbsolutePath().getParent();
        for (int k = 0; k < HIGHEST && folder != null; k++) {
            if (Files.isRegularFile(folder.resolve(OUTING))) {
                return Optional.of(new Remembered(folder.toRealPath(), SurveyRequest.document(folder.resolve(OUTING))));
            }
            folder = folder.getParent();
        }
        return Optional.empty();
    }

    /** An outing whose document is at hand. */
    public static Remembered of(Path root, JsonObject outing) {
        return new Remembered(root, outing);
    }

    /** What was measured of frames that lie in the outing; others, and views through another lens, are passed over. */
    public void measured(SurveyRequest survey, JsonObject answer) throws IOException {
        List<Path> files = survey.source().files();
        Path input = files.size() == 1
                ? files.get(0)
                : Optional.ofNullable(files.get(0).getParent()).orElse(root);
        input = input.toRealPath();
        if (input.startsWith(root) && !input.equals(root)) {
            add("measurements", MeasurementRow.of(relative(root, input), input, survey, answer, outing, root));
        }
    }

    /** The log of the outing as it stands. */
    public void logged() throws IOException {
        JsonObject rows = LogRows.of(outing);
        if (!rows.getArray("entries").isEmpty()) {
            add(rows);
        }
    }

    /** The frames of a card in the outing, {@code sort/1}, and what the long ones show. */
    public void sorted(Path card, JsonObject sorted, Work work) throws IOException {
        Path real = card.toRealPath();
        if (real.startsWith(root)) {
            JsonObject found = CardRows.of(root, real, sorted);
            found.put("results", new CameOut(root, known()).ofFrames(real, sorted, work));
            add(found);
        }
    }

    /** A mean of frames that lies in the outing, {@code stack/1}: what came out against what was predicted. */
    public void stacked(Path result, List<Path> sources, JsonObject answer, Work work) throws IOException {
        Path real = result.toRealPath();
        if (real.startsWith(root) && answer.isNumber("seconds")) {
            Optional<JsonObject> row = new CameOut(root, known()).ofStack(real, sources, answer, work);
            if (row.isPresent()) {
                add("results", row.get());
            }
        }
    }

    private JsonObject known() throws IOException {
        for (Object each : new MemoryStore(DataFolder.data()).read().getArray("outings")) {
            if (each instanceof JsonObject one && root.toString().equals(one.getString("folder"))) {
                return one;
            }
        }
        return new JsonObject();
    }

    /** How a file of the outing in {@code root} is named in the memory. */
    static String relative(Path root, Path file) {
        return root.relativize(file).toString().replace('\\', '/');
    }

    private void add(String list, JsonObject row) throws IOException {
        JsonObject found = new JsonObject();
        found.put(list, new JsonArray(List.of(row)));
        add(found);
    }

    private void add(JsonObject found) throws IOException {
        found.put("folder", root.toString());
        found.put("name", outing.getString("name"));
        found.put("zone", outing.getString("zone"));
        JsonObject place = outing.getObject("place");
        if (place != null && place.get("at") instanceof JsonArray at && at.size() == 2) {
            found.put("latitude", at.getDouble(0));
            found.put("longitude", at.getDouble(1));
        }
        JsonObject memory = new JsonObject();
        memory.put("schema", MemoryStore.SCHEMA);
        memory.put("outings", new JsonArray(List.of(found)));
        new MemoryStore(DataFolder.data()).remember(memory);
    }

    /** Something to write down. */
    public interface Step {
        void run() throws IOException;
    }

    /** Writes something down; where that fails, says why instead of failing. */
    public static Optional<String> tried(Step step) {
        try {
            step.run();
            return Optional.empty();
        } catch (IOException | RequestException e) {
            return Optional.of("not remembered for outcomes: " + e.getMessage());
        }
    }
}
