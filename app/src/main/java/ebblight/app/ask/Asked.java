package ebblight.app.ask;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;

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

    /** The document as it is printed with {@code --json}. */
    public static String print(JsonObject document) {
        return JsonWriter.indent("  ").string().object(document).done();
    }
}
