package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.cache.DiskCache;
import ebblight.app.cache.Stamps;
import ebblight.app.outing.OutingFolder;
import ebblight.engine.RequestException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a page wants made, as it would be typed: a command, files of the outing, options. Only what is listed here can be
 * asked for, files are named by their path in the outing, and results go to {@code made/} alone.
 */
final class MakeRequest {

    /** What may stand behind a command: plain values, JSON documents, files of the outing, files written beside. */
    private record Allowed(Set<String> values, Set<String> documents, Set<String> files, Map<String, String> outputs) {}

    private static final Map<String, Allowed> COMMANDS = Map.of(
            "stack",
            new Allowed(Set.of("as", "fps", "align", "linear", "mosaic"), Set.of(), Set.of("darks"), Map.of()),
            "blend",
            new Allowed(Set.of("fps"), Set.of("parts", "strokes"), Set.of(), Map.of("masks", "")),
            "repair",
            new Allowed(Set.of(), Set.of("with"), Set.of("darks", "frames", "reference"), Map.of("mask", ".png")),
            "finish",
            new Allowed(
                    Set.of("fps"),
                    Set.of("with", "strokes"),
                    Set.of("frames"),
                    Map.of("save", ".json", "strip", ".jpg")),
            "write",
            new Allowed(
                    Set.of(
                            "size",
                            "ppi",
                            "border",
                            "long-edge",
                            "at-most",
                            "intent",
                            "title",
                            "caption",
                            "creator",
                            "copyright",
                            "keywords",
                            "of",
                            "number",
                            "paper",
                            "contact",
                            "strip",
                            "lesson",
                            "hide"),
                    Set.of("with", "wish", "settings", "when", "measure", "stack"),
                    Set.of("profile", "proof", "without"),
                    Map.of("edition", ".json", "proof-picture", ".jpg")));

    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._-]{0,79}");
    private static final Set<String> ENDINGS = Set.of("tif", "jpg", "pdf");

    private final OutingFolder folder;
    private final JsonObject request;
    private final String command;
    private final Allowed allowed;
    private final List<Path> inputs = new ArrayList<>();

    MakeRequest(OutingFolder folder, JsonObject request) throws IOException {
        this.folder = folder;
        this.request = request;
        this.command = request.getString("command", "");
        Allowed known = COMMANDS.get(command);
        if (known == null) {
            throw new RequestException("command", "must be one of stack, blend, repair, finish and write");
        }
        this.allowed = known;
        for (Object path : request.getArray("inputs", new JsonArray())) {
            inputs.add(folder.inside(String.valueOf(path)));
        }
        if (inputs.isEmpty()) {
            throw new RequestException("inputs", "is empty: name pictures of the outing");
        }
    }

    /** What stands for this request: another one when a file changed meanwhile. */
    String key() throws IOException {
        StringBuilder files = new StringBuilder();
        for (Path file : inputs) {
            files.append(Stamps.of(file));
        }
        for (Object named : object("files").values()) {
            for (Path file : named(named)) {
                files.append(Stamps.of(file));
            }
        }
        return DiskCache.name(".json", "make", JsonWriter.string(request), files.toString());
    }

    /** A place in {@code made/} where nothing lies yet. */
    Path freeOutput() throws IOException {
        String name = request.getString("name", command);
        String ending = request.getString("ending", "tif");
        if (!NAME.matcher(name).matches()) {
            throw new RequestException("name", "must be letters, digits, spaces, dots and hyphens, at most 80");
        }
        if (!ENDINGS.contains(ending)) {
            throw new RequestException("ending", "must be tif, jpg or pdf");
        }
        Path made = Files.createDirectories(folder.root().resolve("made"));
        Path target = made.resolve(name + "." + ending);
        for (int k = 2; Files.exists(target); k++) {
            target = made.resolve(name + "-" + k + "." + ending);
        }
        return target;
    }

    /**
     * What would be typed.
     *
     * @param scratch folder for the JSON documents that the command is given
     */
    String[] arguments(Path output, Path scratch) throws IOException {
        List<String> typed = new ArrayList<>(List.of(command));
        for (Map.Entry<String, Object> each : object("options").entrySet()) {
            String option = known("options", each.getKey(), allowed.values);
            Object value = each.getValue();
            if (Boolean.TRUE.equals(value)) {
                typed.add(option);
            } else if (!Boolean.FALSE.equals(value)) {
                typed.add(option + "=" + value);
            }
        }
        for (Map.Entry<String, Object> each : object("documents").entrySet()) {
            String option = known("documents", each.getKey(), allowed.documents);
            Path file = scratch.resolve(each.getKey() + ".json");
            Files.writeString(file, JsonWriter.string(each.getValue()));
            typed.add(option + "=" + file);
        }
        for (Map.Entry<String, Object> each : object("files").entrySet()) {
            String option = known("files", each.getKey(), allowed.files);
            for (Path file : named(each.getValue())) {
                typed.add(option + "=" + file);
            }
        }
        for (Map.Entry<String, Object> each : object("outputs").entrySet()) {
            String option = known("outputs", each.getKey(), allowed.outputs.keySet());
            typed.add(option + "=" + beside(output, each.getKey(), each.getValue()));
        }
        typed.add("-o=" + output);
        typed.add("--");
        inputs.forEach(file -> typed.add(file.toString()));
        return typed.toArray(String[]::new);
    }

    /** A file or folder of the outing, or several. */
    private List<Path> named(Object value) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Object path : value instanceof JsonArray several ? several : List.of(value)) {
            files.add(folder.inside(String.valueOf(path)));
        }
        return files;
    }

    /** A further file of a result; one with a name of its own is kept from result to result. */
    private Path beside(Path output, String what, Object name) {
        String ending = allowed.outputs.getOrDefault(what, "");
        if (!(name instanceof String own)) {
            String stem = String.valueOf(output.getFileName()).replaceFirst("\\.[a-z]+$", "");
            return output.resolveSibling(stem + "." + what + ending);
        }
        if (!NAME.matcher(own).matches()) {
            throw new RequestException(
                    "outputs." + what, "must be letters, digits, spaces, dots and hyphens, at most 80");
        }
        return output.resolveSibling(own + ending);
    }

    private JsonObject object(String field) {
        return request.getObject(field, new JsonObject());
    }

    private String known(String field, String option, Set<String> from) {
        if (!from.contains(option)) {
            throw new RequestException(
                    field, "\"" + option + "\" is not known for " + command + "; known are " + String.join(", ", from));
        }
        return "--" + option;
    }
}
