package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.engine.RequestException;
import io.javalin.http.Context;

/** JSON in and out of requests. */
final class Replies {

    private Replies() {}

    static JsonObject body(Context context) {
        try {
            return JsonParser.object().from(context.body());
        } catch (JsonParserException e) {
            throw new RequestException("request", "is not a JSON object: " + e.getMessage());
        }
    }

    static void json(Context context, JsonObject document) {
        context.header("Cache-Control", "no-store");
        context.contentType("application/json; charset=utf-8");
        context.result(JsonWriter.string(document));
    }

    static void jpeg(Context context, byte[] bytes, boolean forever) {
        context.header("Cache-Control", forever ? "private, max-age=31536000, immutable" : "no-cache");
        context.contentType("image/jpeg");
        context.result(bytes);
    }
}
