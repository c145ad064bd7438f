package ebblight.app.serve;

import ebblight.app.cache.DiskCache;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.made.PictureMaker;
import ebblight.app.memory.MemoryFile;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.UnauthorizedResponse;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;

/** The app at 127.0.0.1: pages, the engine over HTTP, the outing's files, the kit. */
public final class LocalServer implements AutoCloseable {

    private static final long MOST_CACHE_BYTES = 1L << 30;
    private static final long MOST_JSON_BYTES = 8L << 20;

    private final Javalin javalin;
    private final Gate gate = new Gate();
    private final Jobs jobs = new Jobs();
    private final HandOver door;

    private LocalServer(OutingFolder folder, Path data, Path cache, Clock clock, PictureMaker maker)
            throws IOException {
        DiskCache pictures = new DiskCache(cache.resolve("pictures"), MOST_CACHE_BYTES, clock);
        String shadow = DiskCache.name("", folder.root().toString());
        OutingFile outing = new OutingFile(folder, data.resolve("outings").resolve(shadow));
        Desk desk = new Desk(folder, pictures);
        javalin = Javalin.create(config -> {
            config.showJavalinBanner = false;
            config.useVirtualThreads = false;
            config.http.maxRequestSize = MOST_JSON_BYTES;
            config.http.defaultContentType = "text/plain; charset=utf-8";
            quiet(config);
        });
        javalin.before(gate::before);
        javalin.before("/api/*", gate::check);
        javalin.get("/enter", context -> {
            gate.enter(context);
            context.redirect("/", io.javalin.http.HttpStatus.SEE_OTHER);
        });
        javalin.get("/", context -> {
            gate.check(context);
            WebFiles.serve(context, "index.html");
        });
        javalin.get("/web/*", context -> WebFiles.serve(context, context.path().substring("/web/".length())));
        new AskRoutes(desk, jobs, pictures, folder).add(javalin);
        new OutingRoutes(folder, outing, pictures, clock).add(javalin);
        KitStore kit = new KitStore(data);
        new KitRoutes(kit, new MemoryFile(data)).add(javalin);
        AfterDesk after = new AfterDesk(folder, desk, pictures, kit, data, maker);
        new AfterRoutes(after, jobs).add(javalin);
        new ProofRoutes(folder, after, jobs).add(javalin);
        new PlanRoutes(folder, clock).add(javalin);
        door = new HandOver(clock);
        new PhoneRoutes(folder, outing, kit, door).add(javalin);
        javalin.exception(UnauthorizedResponse.class, LocalServer::closedDoor);
        javalin.exception(Exception.class, Problems::answer);
    }

    private static void quiet(JavalinConfig config) {
        config.startupWatcherEnabled = false;
    }

    /** A page for people who come without the token, a document for scripts. */
    private static void closedDoor(UnauthorizedResponse e, Context context) {
        if (context.path().startsWith("/api/")) {
            Problems.answer(e, context);
            return;
        }
        context.status(401);
        context.contentType("text/html; charset=utf-8");
        try {
            context.result(new String(WebFiles.bytes("closed.html"), StandardCharsets.UTF_8)
                    .replace("REASON", String.valueOf(e.getMessage())));
        } catch (IOException missing) {
            Problems.answer(e, context);
        }
    }

    /** Starts a server on the folder of an outing, with the user's own data. */
    public static LocalServer start(OutingFolder folder, int port, Clock clock, PictureMaker maker) throws IOException {
        return start(folder, DataFolder.data(), DataFolder.cache(), port, clock, maker);
    }

    /** Starts a server with data and cache in the folders named; port 0 takes any free one. */
    public static LocalServer start(
            OutingFolder folder, Path data, Path cache, int port, Clock clock, PictureMaker maker) throws IOException {
        LocalServer server = new LocalServer(folder, data, cache, clock, maker);
        try {
            server.javalin.start("127.0.0.1", port);
        } catch (RuntimeException e) {
            server.close();
            throw new IOException(
                    "port " + port + " is taken, perhaps by another Ebblight; leave --port out to take a free one", e);
        }
        return server;
    }

    /** The link that opens the app; it carries the token. */
    public URI link() {
        return gate.link(javalin.port());
    }

    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        door.close();
        jobs.close();
        javalin.stop();
    }
}
