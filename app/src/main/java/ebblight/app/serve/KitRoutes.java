package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.app.kit.KitStore;
import ebblight.app.memory.MemoryFile;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;

/** The kit, and the one file that keeps it with all that is remembered. */
final class KitRoutes {

    private final KitStore kit;
    private final MemoryFile file;

    KitRoutes(KitStore kit, MemoryFile file) {
        this.kit = kit;
        this.file = file;
    }

    void add(Javalin javalin) {
        javalin.get("/api/kit", this::read);
        javalin.put("/api/kit", this::write);
    }

    private void read(Context context) throws IOException {
        if (context.queryParam("export") == null) {
            Replies.json(context, kit.read());
            return;
        }
        context.header("Content-Disposition", "attachment; filename=\"ebblight-memory.json\"");
        Replies.json(context, file.read());
    }

    /** A kit takes the place of the kit; what is remembered, {@code memory/1}, joins what is known. */
    private void write(Context context) throws IOException {
        JsonObject document = Replies.body(context);
        if (MemoryFile.isOne(document)) {
            file.take(document);
        } else {
            kit.write(document);
        }
        Replies.json(context, kit.read());
    }
}
