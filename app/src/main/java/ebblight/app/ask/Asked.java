package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import java.util.List;

/** Documents between the engine and the person. */
public final class Asked {

    private Asked() {}

    /** An answer of the engine as an object. */
    public static JsonObject parse(String json) {
        try {
            return JsonParser.object().from(json);
        } catch (JsonParserException e) {
            throw new IllegalStateException("the engine answered with something that is no JSON", e);
        }
    }

    /** Answers a request that names no frames. */
    public static JsonObject of(Engine engine, JsonObject request, Work work) {
        return parse(engine.answer(JsonWriter.string(request), new Blobs(), work));
    }

    /** The rows of an array of objects. */
    public static List<JsonObject> rows(JsonArray array) {
        return array.stream().map(JsonObject.class::cast).toList();
    }

    /** The document as it is printed with {@code --json}. */
    public static String print(JsonObject document) {
        return JsonWriter.indent("  ").string().object(document).done();
    }
}
