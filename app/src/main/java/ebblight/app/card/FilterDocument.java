package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.FilterCheck;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.UnreadableInputException;
import java.nio.file.Path;
import java.util.List;

/** A checked filter as {@code filter-check/1}. */
public final class FilterDocument {

    private FilterDocument() {}

    /** The document for pairs of frames, each without and with. */
    public static JsonObject of(List<Path> frames, FilterCheck check, List<String> warnings) {
        JsonObject cast = new JsonObject();
        cast.put("red", check.red());
        cast.put("green", 1);
        cast.put("blue", check.blue());
        JsonObject lab = new JsonObject();
        lab.put("a", check.labShift().a());
        lab.put("b", check.labShift().b());
        JsonObject corner = new JsonObject();
        corner.put("cornerStops", check.cornerStops());
        corner.put("rangeStops", check.cornerRangeStops());
        JsonArray pairs = new JsonArray();
        for (int k = 0; k < check.perPair().size(); k++) {
            JsonObject pair = new JsonObject();
            pair.put("without", frames.get(2 * k).toString());
            pair.put("with", frames.get(2 * k + 1).toString());
            pair.put("stops", check.perPair().get(k));
            pairs.add(pair);
        }
        JsonObject document = new JsonObject();
        document.put("schema", "filter-check/1");
        document.put("stops", check.stops());
        document.put("low", check.low());
        document.put("high", check.high());
        document.put("cast", cast);
        document.put("castLab", lab);
        document.put("castWord", check.castWord());
        document.put("vignetting", corner);
        document.put("pairs", pairs);
        document.put("warnings", new JsonArray(warnings));
        return document;
    }

    /** The day on which a frame was taken, on the camera's clock; empty when it does not say. */
    public static String dateOf(Path frame) throws UnreadableInputException {
        return FrameFacts.of(frame).taken().map(t -> t.toLocalDate().toString()).orElse("");
    }
}
