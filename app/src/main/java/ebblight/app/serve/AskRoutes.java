package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.cache.DiskCache;
import ebblight.app.outing.OutingFolder;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.sse.SseClient;
import java.io.FileNotFoundException;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/** The engine over HTTP: ask, watch, stop, fetch pictures. */
final class AskRoutes {

    private static final int ASKED = 0;
    private static final int AHEAD = 1;
    private static final int IDLE = 2;
    private static final Pattern BLOB = Pattern.compile("[0-9a-f]{32}\\.(jpg|bin)");

    private final Desk desk;
    private final Jobs jobs;
    private final DiskCache pictures;
    private final OutingFolder folder;

    AskRoutes(Desk desk, Jobs jobs, DiskCache pictures, OutingFolder folder) {
        this.desk = desk;
        this.jobs = jobs;
        this.pictures = pictures;
        this.folder = folder;
    }

    void add(Javalin javalin) {
        javalin.post("/api/ask", this::ask);
        javalin.post("/api/make", this::make);
        javalin.get("/api/jobs/{id}", this::job);
        javalin.delete("/api/jobs/{id}", this::stop);
        javalin.get("/api/blobs/{name}", this::blob);
        javalin.sse("/api/events", this::events);
    }

    private void ask(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        if (Desk.atOnce(request)) {
            Replies.json(context, desk.numbers(request));
            return;
        }
        String key = desk.key(request);
        JsonObject known = desk.known(key);
        String schema = request.getString("schema", "");
        if (known != null) {
            if (schema.equals("measure/1")) {
                jobs.begin("at hand " + key, IDLE, job -> desk.atHand(request, job));
            }
            Replies.json(context, known);
            return;
        }
        int rank =
                switch (schema) {
                    case "measure/1", "parts/1", "wish/1", "wash/1" -> ASKED;
                    default -> AHEAD;
                };
        Replies.job(context, jobs.begin(key, rank, job -> desk.answer(request, key, job)));
    }

    private void make(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        String key = "make " + JsonWriter.string(request);
        Replies.job(
                context,
                jobs.begin(key, ASKED, job -> desk.make(request, folder.root().resolve("made"), job)));
    }

    private Job find(Context context) throws FileNotFoundException {
        return jobs.find(context.pathParam("id"))
                .orElseThrow(() -> new FileNotFoundException("this job is not known any more; ask again"));
    }

    private void job(Context context) throws Exception {
        Replies.job(context, find(context));
    }

    private void stop(Context context) throws FileNotFoundException {
        find(context).cancel();
        context.status(204);
    }

    private void blob(Context context) throws Exception {
        String name = context.pathParam("name");
        if (!BLOB.matcher(name).matches()) {
            throw new FileNotFoundException("there is no such picture");
        }
        byte[] bytes = pictures.get(name)
                .orElseThrow(() -> new FileNotFoundException("this picture was put away; ask for it again"));
        if (name.endsWith(".bin")) {
            context.contentType("application/octet-stream");
            context.header("Cache-Control", "private, max-age=31536000, immutable");
            context.result(bytes);
        } else {
            Replies.jpeg(context, bytes, true);
        }
    }

    private void events(SseClient client) {
        Consumer<JsonObject> listener = state -> client.sendEvent("job", JsonWriter.string(state));
        client.keepAlive();
        client.onClose(() -> jobs.forget(listener));
        jobs.listen(listener);
        client.sendEvent("ready", "{}");
    }
}
