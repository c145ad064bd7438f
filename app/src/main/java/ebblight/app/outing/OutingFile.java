package ebblight.app.outing;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;

/**
 * {@code outing.json}: place, views, wishes, plan and log. One writer at a time ({@code .ebblight.lock}); every write
 * names the revision it was made from, goes to a temporary file, and is moved into place.
 */
public final class OutingFile {

    private static final String NAME = "outing.json";
    private static final int MOST_BYTES = 8 << 20;
    private static final int MOST_TRIES = 50;

    private final OutingFolder folder;
    private final Path home;

    /**
     * The file of an outing.
     *
     * @param elsewhere where to keep it when the folder itself cannot be written
     */
    public OutingFile(OutingFolder folder, Path elsewhere) throws IOException {
        this.folder = folder;
        Path inside = folder.root().resolve(NAME);
        boolean writable = Files.exists(inside) ? Files.isWritable(inside) : Files.isWritable(folder.root());
        if (writable && Files.isWritable(folder.root())) {
            home = folder.root();
        } else {
            home = Files.createDirectories(elsewhere);
            if (Files.isReadable(inside) && !Files.exists(home.resolve(NAME))) {
                Files.copy(inside, home.resolve(NAME));
            }
        }
    }

    /** Whether the outing is kept beside its frames; false when the folder cannot be written. */
    public boolean beside() {
        return home.equals(folder.root());
    }

    public Path path() {
        return home.resolve(NAME);
    }

    /** The document as it stands on disk; a new one when there is none. */
    public synchronized JsonObject read() throws IOException {
        Path file = path();
        if (!Files.exists(file)) {
            return fresh();
        }
        if (Files.size(file) > MOST_BYTES) {
            throw new UnreadableInputException(file, "is larger than 8 MB; this is no outing");
        }
        try {
            JsonObject document = JsonParser.object().from(Files.readString(file, StandardCharsets.UTF_8));
            check(document, file.toString());
            return document;
        } catch (JsonParserException e) {
            throw new UnreadableInputException(
                    file, "is not JSON: " + e.getMessage() + "; mend it, or move it away to begin anew");
        }
    }

    private JsonObject fresh() throws IOException {
        JsonObject document = new JsonObject();
        document.put("schema", "outing/1");
        document.put("revision", 0);
        document.put("name", folder.name());
        document.put("zone", ZoneId.systemDefault().getId());
        JsonArray views = new JsonArray();
        for (OutingFolder.Input input : folder.inputs()) {
            JsonObject view = new JsonObject();
            view.put("id", "view-" + (views.size() + 1));
            view.put("name", title(input.path()));
            view.put("frames", input.path());
            views.add(view);
        }
        document.put("views", views);
        document.put("log", new JsonArray());
        return document;
    }

    private static String title(String path) {
        String last = path.substring(path.lastIndexOf('/') + 1);
        int dot = last.lastIndexOf('.');
        return dot > 0 ? last.substring(0, dot) : last;
    }

    /**
     * Writes a document made from the revision it carries.
     *
     * @return the document as written, its revision one higher
     * @throws StaleRevisionException when the file has another revision by now
     */
    public synchronized JsonObject write(JsonObject document) throws IOException {
        check(document, "outing");
        try (FolderLock lock = FolderLock.of(home, path())) {
            lock.check();
            JsonObject now = read();
            if (now.getInt("revision") != document.getInt("revision")) {
                throw new StaleRevisionException(now);
            }
            JsonObject next = new JsonObject();
            next.putAll(document);
            next.put("revision", document.getInt("revision") + 1);
            byte[] bytes = JsonWriter.indent("  ").string().object(next).done().getBytes(StandardCharsets.UTF_8);
            if (bytes.length > MOST_BYTES) {
                throw new IOException(path() + ": would grow beyond 8 MB; begin a new outing");
            }
            OutputFile.write(path(), bytes);
            return next;
        }
    }

    /** Something done to the document in place. */
    @FunctionalInterface
    public interface Change {
        void to(JsonObject document) throws IOException;
    }

    /** Does {@code change} to the document as it stands, and again to the newer one where somebody else was faster. */
    public JsonObject change(Change change) throws IOException {
        for (int left = MOST_TRIES; ; left--) {
            JsonObject document = read();
            change.to(document);
            try {
                return write(document);
            } catch (StaleRevisionException e) {
                if (left == 1) {
                    throw new IOException(path() + ": is written by others all the time; try again", e);
                }
            }
        }
    }

    private static void check(JsonObject document, String where) throws UnreadableInputException {
        if (!"outing/1".equals(document.getString("schema"))) {
            throw new UnreadableInputException(where + ": schema must be outing/1");
        }
        if (!document.isNumber("revision")) {
            throw new UnreadableInputException(where + ": revision must be a number");
        }
        for (String list : new String[] {"views", "log"}) {
            if (document.has(list) && !(document.get(list) instanceof JsonArray)) {
                throw new UnreadableInputException(where + ": " + list + " must be a list");
            }
        }
        try {
            ZoneId.of(document.getString("zone", "UTC"));
        } catch (DateTimeException e) {
            throw new UnreadableInputException(
                    where + ": zone must be a time zone such as Atlantic/Reykjavik, was " + document.getString("zone"));
        }
    }
}
