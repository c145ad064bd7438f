package ebblight.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;

/** Puts requests to an engine and looks at what every answer must hold. */
final class Asking {

    private final Engine engine = new Engine();
    private final Blobs blobs;

    Asking(Blobs blobs) {
        this.blobs = blobs;
    }

    static JsonObject json(String text) {
        try {
            return JsonParser.object().from(text.replace('\'', '"'));
        } catch (JsonParserException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    /** The answer: a document of the same schema whose numbers are all finite. */
    JsonObject ask(JsonObject request) {
        JsonObject answer = json(engine.answer(JsonWriter.string(request), blobs, Work.alone()));
        assertThat(answer.getString("schema")).isEqualTo(request.getString("schema"));
        finite(answer, "answer");
        return answer;
    }

    /** {@code request} with one field set to {@code value} (JSON), or taken away when that is empty. */
    static JsonObject with(JsonObject request, String field, String value) {
        JsonObject changed = json(JsonWriter.string(request));
        JsonObject holder = changed;
        String[] path = field.split("\\.", -1);
        for (int k = 0; k + 1 < path.length; k++) {
            holder = holder.getObject(path[k]);
        }
        String last = path[path.length - 1];
        holder.remove(last);
        if (!value.isEmpty()) {
            holder.put(last, json("{'v':" + value + "}").get("v"));
        }
        return changed;
    }

    /** The sentence with which a request is refused: it begins with the field and is one line. */
    String refused(JsonObject request, String field) {
        RequestException refusal = catchThrowableOfType(
                RequestException.class, () -> engine.answer(JsonWriter.string(request), blobs, Work.alone()));
        assertThat(refusal).as("a refusal of " + field).isNotNull();
        String words = String.valueOf(refusal.getMessage());
        assertThat(words).startsWith(field).doesNotContain("\n").doesNotContain("Exception");
        return words;
    }

    private static void finite(Object value, String path) {
        if (value instanceof Number number) {
            assertThat(Double.isFinite(number.doubleValue())).as(path).isTrue();
        } else if (value instanceof JsonObject object) {
            object.forEach((name, each) -> finite(each, path + "." + name));
        } else if (value instanceof JsonArray array) {
            array.forEach(each -> finite(each, path + "[]"));
        }
    }
}
