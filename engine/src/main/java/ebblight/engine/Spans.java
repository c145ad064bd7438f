package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.wish.Span;
import java.util.List;

/** Writes spans of shutter time; null stands for no limit above. */
final class Spans {

    private static final double LONGEST_SECONDS = 960;

    private Spans() {}

    static JsonObject object(Span span) {
        JsonObject one = new JsonObject();
        one.put("fromSeconds", span.fromSeconds());
        one.put("toSeconds", span.toSeconds() > LONGEST_SECONDS ? null : span.toSeconds());
        return one;
    }

    static JsonArray array(List<Span> spans) {
        JsonArray array = new JsonArray();
        spans.forEach(s -> array.add(object(s)));
        return array;
    }
}
