package ebblight.app.serve;

import ebblight.app.kit.KitStore;
import io.javalin.Javalin;

/** The kit; the same document is its export and its import. */
final class KitRoutes {

    private final KitStore kit;

    KitRoutes(KitStore kit) {
        this.kit = kit;
    }

    void add(Javalin javalin) {
        javalin.get("/api/kit", context -> {
            if (context.queryParam("export") != null) {
                context.header("Content-Disposition", "attachment; filename=\"ebblight-kit.json\"");
            }
            Replies.json(context, kit.read());
        });
        javalin.put("/api/kit", context -> {
            kit.write(Replies.body(context));
            Replies.json(context, kit.read());
        });
    }
}
