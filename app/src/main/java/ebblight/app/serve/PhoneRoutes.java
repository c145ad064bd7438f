package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.kit.KitStore;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.JoinedLog;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.pocket.PocketCode;
import ebblight.app.pocket.PocketOuting;
import ebblight.engine.RequestException;
import ebblight.imaging.card.SlateCode;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Path;

/** To the phone and back: the page over the house's network, an outing as a code on the screen, the log brought home. */
final class PhoneRoutes {

    private final OutingFolder folder;
    private final OutingFile outing;
    private final KitStore kit;
    private final HandOver door;

    PhoneRoutes(OutingFolder folder, OutingFile outing, KitStore kit, HandOver door) {
        this.folder = folder;
        this.outing = outing;
        this.kit = kit;
        this.door = door;
    }

    void add(Javalin javalin) {
        javalin.get("/api/hand-over", context -> Replies.json(context, state()));
        javalin.post("/api/hand-over", this::open);
        javalin.delete("/api/hand-over", context -> {
            door.close();
            Replies.json(context, state());
        });
        javalin.post("/api/pocket-code", this::code);
        javalin.post("/api/join", this::join);
    }

    private JsonObject state() {
        JsonObject answer = new JsonObject();
        String link = door.link().orElse("");
        answer.put("open", !link.isEmpty());
        if (!link.isEmpty()) {
            answer.put("link", link);
            answer.put("code", drawn(SlateCode.of(link)));
        }
        return answer;
    }

    private static JsonObject drawn(SlateCode code) {
        JsonObject drawn = new JsonObject();
        drawn.put("side", code.size() + 2 * SlateCode.QUIET);
        drawn.put("path", code.svgPath());
        return drawn;
    }

    private JsonObject packed() throws IOException {
        return PocketOuting.of(outing.read(), kit.read(), folder.root());
    }

    private void open(Context context) throws IOException {
        InetAddress address = HandOver.inTheHouse()
                .orElseThrow(() -> new UsageException("this machine has no address in a house network; join the phone's"
                        + " network, or write the page with ./ebblight pocket"));
        door.open(address, packed());
        Replies.json(context, state());
    }

    private void code(Context context) throws IOException {
        String address = PocketCode.address(Replies.body(context).getString("page", ""), packed());
        JsonObject answer = new JsonObject();
        answer.put("signs", address.length());
        answer.put("most", PocketCode.MOST_SIGNS);
        boolean fits = address.length() <= PocketCode.MOST_SIGNS;
        answer.put("fits", fits);
        answer.put("address", fits ? address : null);
        answer.put("code", fits ? drawn(SlateCode.ofLong(address)) : null);
        Replies.json(context, answer);
    }

    private void join(Context context) throws IOException {
        JsonObject body = Replies.body(context);
        JsonObject brought = body.getObject("log");
        String name = body.getString("name", "log");
        if (brought == null) {
            throw new RequestException("log", "is missing: the file that the phone saved");
        }
        JoinedLog.check(brought, Path.of(name.replaceAll("[^\\w.-]", "_")));
        Path card = body.isString("frames") ? folder.inside(body.getString("frames")) : null;
        JsonObject answer = new JsonObject();
        JsonObject written = outing.change(document -> answer.putAll(JoinedLog.of(document, brought, card)));
        answer.put("revision", written.getInt("revision"));
        answer.put(
                "note",
                Remembered.tried(() -> Remembered.of(folder.root(), written).logged())
                        .orElse(null));
        Replies.json(context, answer);
    }
}
