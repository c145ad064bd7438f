package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.cache.DiskCache;
import ebblight.app.report.StripSprite;
import ebblight.core.motion.StripCrop;
import ebblight.core.numeric.RgbPicture;
import ebblight.imaging.PictureFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Answers {@code strip/1}: test strips of all parts named, cut from the previews at every third of a stop. The previews
 * are kept, so that the page finds them ready.
 */
final class Strips {

    private final Reading of;
    private final DiskCache cache;

    Strips(Reading of, DiskCache cache) {
        this.of = of;
        this.cache = cache;
    }

    JsonObject answer(JsonObject more, JsonObject blobs, Job job) throws IOException {
        JsonObject asked = new JsonObject();
        if (more.has("strokes")) {
            asked.put("strokes", more.get("strokes"));
        }
        JsonArray crops = more.getArray("crops", new JsonArray());
        int every = more.getInt("everyThirds", 3);
        int pieces = (PreviewNodes.LAST - PreviewNodes.FIRST) / every + 1;
        List<StripSprite> sprites = new ArrayList<>();
        for (int k = 0; k < crops.size(); k++) {
            sprites.add(new StripSprite(pieces));
        }
        for (int piece = 0; piece < pieces; piece++) {
            job.giveWay();
            of.serve(job);
            job.progress((double) piece / pieces, "exposing the test strip");
            RgbPicture picture = node(PreviewNodes.FIRST + every * piece, asked);
            for (int k = 0; k < crops.size(); k++) {
                JsonObject c = crops.getObject(k);
                sprites.get(k)
                        .add(
                                piece,
                                picture,
                                new StripCrop(
                                        c.getDouble("left"),
                                        c.getDouble("top"),
                                        c.getDouble("width"),
                                        c.getDouble("height")));
            }
        }
        JsonArray strips = new JsonArray();
        for (int k = 0; k < crops.size(); k++) {
            JsonObject crop = crops.getObject(k);
            StripSprite sprite = sprites.get(k);
            JsonArray contrast = new JsonArray();
            for (int piece = 0; piece < pieces; piece++) {
                JsonObject at = new JsonObject();
                at.put("seconds", PreviewNodes.seconds(PreviewNodes.FIRST + every * piece));
                at.put("share", sprite.share(piece));
                contrast.add(at);
            }
            sprite.raise();
            String id = crop.getString("id", "");
            String name = DiskCache.name(
                    ".jpg", of.identity(), JsonWriter.string(asked), JsonWriter.string(crop), "strip " + every);
            cache.put(name, sprite.jpeg(job));
            blobs.put(id, "/api/blobs/" + name);
            JsonObject one = new JsonObject();
            one.put("id", id);
            one.put("raised", sprite.raised());
            one.put("contrast", contrast);
            one.put("pieces", pieces);
            one.put("pieceWidth", StripSprite.PIECE_WIDTH);
            one.put("pieceHeight", StripSprite.PIECE_HEIGHT);
            strips.add(one);
        }
        JsonObject answer = new JsonObject();
        answer.put("schema", "strip/1");
        answer.put("firstThird", PreviewNodes.FIRST);
        answer.put("everyThirds", every);
        answer.put("strips", strips);
        return answer;
    }

    private RgbPicture node(int node, JsonObject asked) throws IOException {
        of.nodes().kept(node, asked, cache, of);
        return PictureFile.linearAt(cache.path(of.nodes().name(node, asked)), PreviewNodes.WIDTH);
    }
}
