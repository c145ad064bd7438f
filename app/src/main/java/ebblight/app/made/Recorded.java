package ebblight.app.made;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.Work;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** A record that was read again. */
public final class Recorded {

    private final Path file;
    private final JsonObject json;
    private final List<Source> sources = new ArrayList<>();
    private final Source result;

    private Recorded(Path file, JsonObject json) throws UnreadableInputException {
        this.file = file;
        this.json = json;
        for (JsonObject each : Asked.rows(array("sources"))) {
            sources.add(source(each, "sources"));
        }
        this.result = source(object("result"), "result");
        text("command");
        array("options");
    }

    /** Reads the record {@code named}, or the record beside the result {@code named}. */
    public static Recorded read(Path named) throws IOException {
        boolean record = String.valueOf(named.getFileName()).endsWith(".json");
        Path file = record ? named : Made.beside(named);
        JsonObject json = SurveyRequest.document(file);
        if (!Made.SCHEMA.equals(json.getString("schema"))) {
            throw new UnreadableInputException(
                    file, "is no record of a result: its schema is not \"" + Made.SCHEMA + "\"");
        }
        try {
            return new Recorded(file, json);
        } catch (ClassCastException e) {
            throw new UnreadableInputException(file, "is damaged: a list holds what does not belong in it");
        }
    }

    /** Where the result lies, or would lie. */
    public Path result() {
        return Made.folder(file).resolve(result.path());
    }

    /** What made it. */
    public String program() throws UnreadableInputException {
        return text("program");
    }

    /** Whether a file holds the very bytes of the result. */
    public boolean isResult(Path other) throws IOException {
        return Files.isRegularFile(other)
                && Files.size(other) == result.bytes()
                && Source.sha256(other).equals(result.sha256());
    }

    /** A source that is not what it was: its path, and what is the matter with it. */
    public record Trouble(Path file, String reason, boolean missing) {}

    /** Sources that are missing, have changed, or have come into a folder since. */
    public List<Trouble> troubles(Work work) throws IOException {
        Path folder = Made.folder(file);
        String[] reasons = new String[sources.size()];
        try {
            work.forEach(reasons.length, k -> {
                try {
                    reasons[k] = sources.get(k).trouble(folder);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        List<Trouble> troubles = new ArrayList<>();
        for (int k = 0; k < reasons.length; k++) {
            if (!reasons[k].isEmpty()) {
                boolean missing = !reasons[k].startsWith("has changed");
                troubles.add(new Trouble(folder.resolve(sources.get(k).path()).normalize(), reasons[k], missing));
            }
        }
        for (Map.Entry<String, Object> each : object("folders").entrySet()) {
            Path given = folder.resolve(String.valueOf(each.getValue())).normalize();
            TreeSet<Path> now = new TreeSet<>(Files.isDirectory(given) ? GivenFiles.in(given) : List.of());
            sources.forEach(s -> now.remove(folder.resolve(s.path()).normalize()));
            now.forEach(f -> troubles.add(new Trouble(f, "was not there then", false)));
        }
        return troubles;
    }

    /**
     * What is to be typed to make it again.
     *
     * @param output where it goes
     * @param scratch folder for the JSON files that the command was given
     */
    public String[] arguments(Path output, Path scratch) throws IOException {
        Path folder = Made.folder(file);
        List<String> typed = new ArrayList<>();
        typed.add(text("command"));
        array("options").forEach(option -> typed.add(String.valueOf(option)));
        for (Map.Entry<String, Object> each : object("documents").entrySet()) {
            Path written = scratch.resolve(each.getKey().replaceAll("\\W", "") + ".json");
            Files.writeString(written, JsonWriter.string(each.getValue()));
            typed.add(each.getKey() + "=" + written);
        }
        JsonObject folders = object("folders");
        folders.forEach((option, path) ->
                typed.add(option + "=" + folder.resolve(String.valueOf(path)).normalize()));
        for (Source source : sources) {
            if (source.as().startsWith("-") && !folders.has(source.as())) {
                typed.add(source.as() + "=" + folder.resolve(source.path()).normalize());
            }
        }
        typed.add("-o=" + output);
        typed.add("--");
        for (Source source : sources) {
            if (source.as().equals(Making.INPUT)) {
                typed.add(folder.resolve(source.path()).normalize().toString());
            }
        }
        return typed.toArray(String[]::new);
    }

    private Source source(JsonObject from, String field) throws UnreadableInputException {
        if (!from.isString("path") || !from.isNumber("bytes") || !from.isString("sha256")) {
            throw missing(field + " with path, bytes and sha256");
        }
        return new Source(
                from.getString("as", ""), from.getString("path"), from.getLong("bytes"), from.getString("sha256"));
    }

    private String text(String field) throws UnreadableInputException {
        if (!json.isString(field)) {
            throw missing(field);
        }
        return json.getString(field);
    }

    private JsonArray array(String field) throws UnreadableInputException {
        if (json.get(field) instanceof JsonArray array) {
            return array;
        }
        throw missing(field);
    }

    private JsonObject object(String field) throws UnreadableInputException {
        if (json.get(field) instanceof JsonObject object) {
            return object;
        }
        throw missing(field);
    }

    private UnreadableInputException missing(String field) {
        return new UnreadableInputException(file, "is no whole record of a result: " + field + " is missing");
    }
}
