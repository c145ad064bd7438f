package ebblight.app.memory;

import com.grack.nanojson.JsonObject;
import ebblight.app.kit.KitStore;
import java.io.IOException;
import java.nio.file.Path;

/** All that is remembered, and the kit, as one document to keep: {@code memory/1}. */
public final class MemoryFile {

    private static final String KIT = "kit";

    private final MemoryStore memory;
    private final KitStore kit;

    /** The memory and the kit in the folder of the user's own data. */
    public MemoryFile(Path data) throws IOException {
        this.memory = new MemoryStore(data);
        this.kit = new KitStore(data);
    }

    /** Whether a document says that it is such a file. */
    public static boolean isOne(JsonObject document) {
        return MemoryStore.SCHEMA.equals(document.getString("schema"));
    }

    /** What is remembered now, with the kit. */
    public JsonObject read() throws IOException {
        JsonObject all = memory.read();
        all.put(KIT, kit.read());
        return all;
    }

    /**
     * Adds what such a document holds to what is remembered; its kit takes the place of the kit.
     *
     * @throws ebblight.engine.RequestException naming the field that cannot be meant, before anything is taken in
     */
    public void take(JsonObject document) throws IOException {
        if (document.get(KIT) instanceof JsonObject given) {
            KitStore.check(given);
        }
        memory.remember(document);
        if (document.get(KIT) instanceof JsonObject given) {
            kit.write(given);
        }
    }
}
