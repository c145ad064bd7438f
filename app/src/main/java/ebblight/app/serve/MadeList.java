package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.made.Made;
import ebblight.app.made.Making;
import ebblight.app.outing.OutingFolder;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The results of an outing: files in its folder, or in {@code made/}, that have a record beside them. */
final class MadeList {

    private static final int MOST = 500;

    private MadeList() {}

    /** The newest first; each with the command, what it said, and what it was made from. */
    static JsonArray of(OutingFolder folder) throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path place : new Path[] {folder.root(), folder.root().resolve("made")}) {
            if (Files.isDirectory(place)) {
                try (Stream<Path> list = Files.list(place)) {
                    list.filter(f -> Files.isRegularFile(f) && Files.isRegularFile(Made.beside(f)))
                            .forEach(files::add);
                }
            }
        }
        files.sort(Comparator.comparing((Path f) -> f.toFile().lastModified()).reversed());
        JsonArray rows = new JsonArray();
        for (Path file : files.subList(0, Math.min(MOST, files.size()))) {
            Optional<JsonObject> record = record(file);
            if (record.isPresent()) {
                rows.add(row(folder, file, record.get()));
            }
        }
        return rows;
    }

    /** The record beside a file; empty where it is none of ours. */
    private static Optional<JsonObject> record(Path file) throws IOException {
        try {
            return Optional.of(SurveyRequest.document(Made.beside(file))).filter(Made::isRecord);
        } catch (UnreadableInputException e) {
            return Optional.empty();
        }
    }

    private static JsonObject row(OutingFolder folder, Path file, JsonObject record) throws IOException {
        JsonObject row = new JsonObject();
        row.put("path", folder.relative(file));
        row.put("bytes", Files.size(file));
        row.put("made", Files.getLastModifiedTime(file).toInstant().toString());
        row.put("command", record.getString("command"));
        row.put("answer", record.getObject("answer", new JsonObject()));
        row.put("documents", record.getObject("documents", new JsonObject()));
        JsonArray sources = new JsonArray();
        JsonArray inputs = new JsonArray();
        for (Object each : record.getArray("sources", new JsonArray())) {
            Path source = file.resolveSibling(((JsonObject) each).getString("path", ""))
                    .normalize();
            if (source.startsWith(folder.root())) {
                sources.add(folder.relative(source));
                if (Making.INPUT.equals(((JsonObject) each).getString("as"))) {
                    inputs.add(folder.relative(source));
                }
            }
        }
        row.put("sources", sources);
        row.put("inputs", inputs);
        return row;
    }
}
