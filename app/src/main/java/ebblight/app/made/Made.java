package ebblight.app.made;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.core.numeric.Work;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;

/** Writes the record of a result: the file of its name with {@code .json} added, in the same folder. */
public final class Made {

    /** Name and version of this program. */
    public static final String PROGRAM = "ebblight 0.1.0";

    static final String SCHEMA = "made/1";
    private static final String ENDING = ".json";

    private Made() {}

    /** Where the record of {@code result} lies. No two results share one, and no record is named as a result is. */
    public static Path beside(Path result) {
        return result.resolveSibling(result.getFileName() + ENDING);
    }

    /** Fails before any work is done when the result, or its record, would take the place of something of yours. */
    public static void check(Path result, Making making) throws IOException {
        Path record = beside(result);
        for (Making.Given given : making.files()) {
            for (Path written : new Path[] {result, record}) {
                if (Files.exists(written) && Files.exists(given.file()) && Files.isSameFile(written, given.file())) {
                    throw new UsageException("-o: " + written
                            + (written == result ? "" : ", where the record of the result goes,")
                            + " is one of the files it is made from, and originals stay as they are; choose another"
                            + " name");
                }
            }
        }
        if (Files.exists(record) && !isRecord(record)) {
            throw new UsageException("-o: the record of the result goes to " + record
                    + ", and a file that is no such record is there already; choose another name");
        }
    }

    /** Whether a document is the record of a result. */
    public static boolean isRecord(JsonObject document) {
        return SCHEMA.equals(document.getString("schema"));
    }

    private static boolean isRecord(Path file) throws IOException {
        try {
            return isRecord(SurveyRequest.document(file));
        } catch (UnreadableInputException e) {
            return false;
        }
    }

    /**
     * Writes the record of a result that was just written. Where that fails, the error says that the result is there.
     *
     * @param answer what the command said of it
     */
    public static void write(Path result, Making making, JsonObject answer, Work work) throws IOException {
        try {
            writeRecord(result, making, answer, work);
        } catch (IOException e) {
            throw new IOException(
                    result + ": is written, but not the record beside it: " + UnreadableInputException.sentence(e), e);
        }
    }

    private static void writeRecord(Path result, Making making, JsonObject answer, Work work) throws IOException {
        Path folder = folder(result);
        JsonObject json = new JsonObject();
        json.put("schema", SCHEMA);
        json.put("program", PROGRAM);
        json.put("command", making.command());
        json.put("options", new JsonArray(making.options()));
        JsonObject documents = new JsonObject();
        documents.putAll(making.documents());
        json.put("documents", documents);
        JsonObject folders = new JsonObject();
        for (Map.Entry<String, Path> each : making.folders().entrySet()) {
            folders.put(each.getKey(), Source.relative(each.getValue(), folder));
        }
        json.put("folders", folders);
        json.put("sources", sources(making, folder, work));
        JsonObject file = Source.of("", result, folder).json();
        file.remove("as");
        json.put("result", file);
        JsonObject said = new JsonObject(answer);
        said.put("file", String.valueOf(result.getFileName()));
        json.put("answer", said);
        OutputFile.write(beside(result), (Asked.print(json) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private static JsonArray sources(Making making, Path folder, Work work) throws IOException {
        JsonObject[] sources = new JsonObject[making.files().size()];
        try {
            work.forEach(sources.length, k -> {
                Making.Given given = making.files().get(k);
                try {
                    sources[k] = Source.of(given.as(), given.file(), folder).json();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return new JsonArray(Arrays.asList(sources));
    }

    static Path folder(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        if (parent == null) {
            throw new UsageException(file + " is no file in a folder; name one");
        }
        return parent;
    }
}
