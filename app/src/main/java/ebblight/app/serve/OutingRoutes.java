package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.cache.DiskCache;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.plan.PlannedWater;
import ebblight.engine.RequestException;
import ebblight.imaging.Inputs;
import ebblight.imaging.ScreenPicture;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The outing itself: its document, what lies in its folder, pictures in it, and clips dropped on the page. */
final class OutingRoutes {

    private static final int TILE = 512;
    private static final int WIDEST_THUMBNAIL = 1600;

    private final OutingFolder folder;
    private final OutingFile outing;
    private final DiskCache pictures;
    private final Dropped dropped;
    private final Clock clock;
    private @Nullable String openName;
    private @Nullable ScreenPicture open;

    OutingRoutes(OutingFolder folder, OutingFile outing, DiskCache pictures, Clock clock) {
        this.folder = folder;
        this.outing = outing;
        this.pictures = pictures;
        this.clock = clock;
        dropped = new Dropped(folder);
    }

    void add(Javalin javalin) {
        javalin.get("/api/outing", this::read);
        javalin.put("/api/outing", this::write);
        javalin.get("/api/water", this::water);
        javalin.post("/api/drop", this::drop);
        javalin.get("/api/thumbnail", this::thumbnail);
        javalin.get("/api/picture", this::facts);
        javalin.get("/api/tile", this::tile);
    }

    private void read(Context context) throws IOException {
        if (!folder.there()) {
            throw new FileNotFoundException(folder.root() + ": the folder is gone; put it back and try again, or open"
                    + " another one with ./ebblight open");
        }
        JsonObject whole = new JsonObject();
        whole.put("outing", outing.read());
        whole.put("folder", folder.root().toString());
        whole.put("beside", outing.beside());
        whole.put("keptIn", outing.path().toString());
        whole.put("now", clock.instant().toString());
        JsonArray inputs = new JsonArray();
        for (OutingFolder.Input input : folder.inputs()) {
            JsonObject one = new JsonObject();
            one.put("path", input.path());
            one.put("clip", input.clip());
            one.put("frames", input.frames());
            one.put("bytes", input.bytes());
            inputs.add(one);
        }
        whole.put("inputs", inputs);
        JsonObject loose = new JsonObject();
        List<Path> frames = folder.loose();
        long bytes = 0;
        for (Path frame : frames) {
            bytes += Files.size(frame);
        }
        loose.put("frames", frames.size());
        loose.put("bytes", bytes);
        whole.put("loose", loose);
        Replies.json(context, whole);
    }

    private void write(Context context) throws IOException {
        JsonObject written = outing.write(Replies.body(context));
        Remembered.tried(() -> Remembered.of(folder.root(), written).logged());
        Replies.json(context, written);
    }

    private void water(Context context) throws IOException {
        JsonObject document = outing.read();
        String table = document.getObject("plan", new JsonObject()).getString("table", "");
        if (!table.isEmpty()) {
            folder.inside(table);
        }
        Replies.json(context, PlannedWater.of(document, folder.root()));
    }

    private void drop(Context context) throws IOException {
        String name = required(context, "name");
        String batch = context.queryParam("batch");
        Path file = dropped.take(context.bodyInputStream(), context.req().getContentLengthLong(), name, batch);
        JsonObject answer = new JsonObject();
        answer.put("path", folder.relative(file));
        answer.put("folder", folder.relative(file.getParent() == null ? file : file.getParent()));
        Replies.json(context, answer);
    }

    private static String required(Context context, String name) {
        String value = context.queryParam(name);
        if (value == null || value.isEmpty()) {
            throw new RequestException(name, "is missing");
        }
        return value;
    }

    private Path picture(Context context) throws IOException {
        Path file = folder.inside(required(context, "path"));
        if (!Files.isRegularFile(file) || !Inputs.isPicture(file)) {
            throw new FileNotFoundException(required(context, "path") + ": is no picture");
        }
        return file;
    }

    private static String stamp(Path file) throws IOException {
        return file + "|" + Files.size(file) + "|"
                + Files.getLastModifiedTime(file).toMillis();
    }

    private static int number(Context context, String name, int least, int most) {
        String text = required(context, name);
        int value = text.matches("\\d{1,7}") ? Integer.parseInt(text) : -1;
        if (value < least || value > most) {
            throw new RequestException(name, "must be a whole number from " + least + " to " + most);
        }
        return value;
    }

    private void thumbnail(Context context) throws IOException {
        Path file = picture(context);
        int width = number(context, "width", 16, WIDEST_THUMBNAIL);
        String name = DiskCache.name(".jpg", "thumbnail", stamp(file), Integer.toString(width));
        byte[] bytes = pictures.get(name).orElse(null);
        if (bytes == null) {
            bytes = ScreenPicture.thumbnail(file, width);
            pictures.put(name, bytes);
        }
        Replies.jpeg(context, bytes, false);
    }

    private synchronized ScreenPicture opened(Path file) throws IOException {
        String name = stamp(file);
        ScreenPicture known = open;
        if (known == null || !name.equals(openName)) {
            known = ScreenPicture.open(file);
            open = known;
            openName = name;
        }
        return known;
    }

    private void facts(Context context) throws IOException {
        ScreenPicture picture = opened(picture(context));
        JsonObject facts = new JsonObject();
        facts.put("width", picture.width());
        facts.put("height", picture.height());
        facts.put("tile", TILE);
        Replies.json(context, facts);
    }

    private void tile(Context context) throws IOException {
        Path file = picture(context);
        int column = number(context, "column", 0, 1000);
        int row = number(context, "row", 0, 1000);
        String name = DiskCache.name(".jpg", "tile", stamp(file), column + "," + row);
        byte[] bytes = pictures.get(name).orElse(null);
        if (bytes == null) {
            bytes = opened(file).tile(column * TILE, row * TILE, TILE);
            pictures.put(name, bytes);
        }
        Replies.jpeg(context, bytes, false);
    }
}
