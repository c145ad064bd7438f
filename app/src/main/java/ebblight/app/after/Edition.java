package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.made.Source;
import ebblight.app.outing.FolderLock;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/**
 * The register of an edition, {@code edition/1}: which number was given to which print. No number is given twice: one
 * writer at a time, and the register is moved into place before anybody is told.
 */
public final class Edition {

    private static final String SCHEMA = "edition/1";
    private static final int MOST = 10_000;

    private final Path register;

    public Edition(Path register) {
        this.register = register;
    }

    /**
     * What is entered of a print.
     *
     * @param title of the picture; may be empty where the register has one
     * @param of prints in the edition; 0 where the register says
     * @param number wanted; 0 for the next free one
     */
    public record Print(Path file, String title, int of, int number, String size, String paper) {}

    /**
     * Enters a print. A number that is there already is answered with the same entry when file, size and paper are the
     * same, so that a lost certificate can be written again, and refused otherwise.
     *
     * @return the entry, with {@code title} and {@code of} of the edition
     */
    public JsonObject enter(Print print) throws IOException {
        UnreadableInputException.unlessReadable(print.file);
        String sha256 = Source.sha256(print.file);
        Path folder = register.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException(register + ": the folder " + folder + " does not exist; make it or choose another");
        }
        try (FolderLock lock = FolderLock.of(folder, register)) {
            JsonObject document = Files.exists(register) ? read() : begun(print);
            checkSame(document, print);
            Map<Integer, JsonObject> taken = new HashMap<>();
            for (JsonObject each : Asked.rows(document.getArray("prints"))) {
                taken.put(each.getInt("number"), each);
            }
            int of = document.getInt("of");
            int number = print.number > 0 ? print.number : next(taken, of);
            JsonObject entry = entry(print, number, sha256);
            JsonObject before = taken.get(number);
            if (before != null && !before.equals(entry)) {
                throw new UsageException("--number: " + number + " was given already, to " + before.getString("file")
                        + ", " + before.getString("size") + ", " + before.getString("paper")
                        + "; leave --number out for the next free one");
            }
            if (before == null) {
                document.getArray("prints").add(entry);
                lock.check();
                OutputFile.write(register, (Asked.print(document) + "\n").getBytes(StandardCharsets.UTF_8));
            }
            JsonObject answer = new JsonObject();
            answer.putAll(entry);
            answer.put("title", document.getString("title"));
            answer.put("of", of);
            answer.put("given", taken.size() + (before == null ? 1 : 0));
            return answer;
        }
    }

    private static JsonObject entry(Print print, int number, String sha256) {
        JsonObject entry = new JsonObject();
        entry.put("number", number);
        entry.put("file", String.valueOf(print.file.getFileName()));
        entry.put("sha256", sha256);
        entry.put("size", print.size);
        entry.put("paper", print.paper);
        return entry;
    }

    private int next(Map<Integer, JsonObject> taken, int of) {
        for (int n = 1; n <= of; n++) {
            if (!taken.containsKey(n)) {
                return n;
            }
        }
        throw new UsageException("--edition: all " + of + " numbers of " + register + " are given");
    }

    private JsonObject begun(Print print) {
        if (print.of == 0 || print.title.isEmpty()) {
            throw new UsageException("--edition: " + register + " is new; say how many prints there will be (--of 12)"
                    + " and what the picture is called (--title)");
        }
        JsonObject document = new JsonObject();
        document.put("schema", SCHEMA);
        document.put("title", print.title);
        document.put("of", print.of);
        document.put("prints", new JsonArray());
        return document;
    }

    private void checkSame(JsonObject document, Print print) {
        int of = document.getInt("of");
        if (print.of != 0 && print.of != of) {
            throw new UsageException("--of: the edition has " + of + " prints, was " + print.of
                    + "; an edition cannot change its number");
        }
        if (!print.title.isEmpty() && !print.title.equals(document.getString("title"))) {
            throw new UsageException("--title: the edition is called \"" + document.getString("title") + "\"; leave the"
                    + " title out, or name another register");
        }
        if (print.number < 0 || print.number > of) {
            throw new UsageException("--number: must lie between 1 and " + of + ", was " + print.number);
        }
    }

    private JsonObject read() throws IOException {
        JsonObject document = SurveyRequest.document(register);
        boolean sound = SCHEMA.equals(document.getString("schema"))
                && document.getInt("of") >= 1
                && document.getInt("of") <= MOST
                && document.isString("title")
                && document.get("prints") instanceof JsonArray prints
                && prints.stream().allMatch(p -> p instanceof JsonObject one && one.getInt("number") >= 1);
        if (!sound) {
            throw new UnreadableInputException(
                    register, "is no register of an edition (" + SCHEMA + " with title, of and prints)");
        }
        return document;
    }
}
