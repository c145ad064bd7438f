package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;

/** Stretches of shutter time, as the engine answers them, in words. */
public final class Spans {

    private Spans() {}

    /** "10 s to 2 min", "from 10 s", "up to 2 min" or "any time". */
    public static String span(JsonObject span) {
        double from = span.getDouble("fromSeconds");
        String to = span.isNumber("toSeconds") ? Words.say(span.getDouble("toSeconds")) : "";
        if (from <= 0) {
            return to.isEmpty() ? "any time" : "up to " + to;
        }
        return to.isEmpty() ? "from " + Words.say(from) : Words.say(from) + " to " + to;
    }

    /** Several of them, or "at no time". */
    public static String any(JsonArray spans) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < spans.size(); i++) {
            text.append(i > 0 ? " or " : "").append(span(spans.getObject(i)));
        }
        return text.isEmpty() ? "at no time" : text.toString();
    }

    /** A window with the part of it that is sure. */
    public static String window(JsonObject window) {
        return span(window) + (window.get("sure") instanceof JsonObject s ? ", sure " + span(s) : ", nowhere sure");
    }
}
