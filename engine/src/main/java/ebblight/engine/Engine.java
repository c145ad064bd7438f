package ebblight.engine;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import java.util.Map;
import java.util.TreeMap;

/** Answers requests: {@code {"schema": "COMMAND/1", …}} in, the document of that command out. */
public final class Engine {

    private final Map<String, Answerer> answerers;

    public Engine() {
        Surveys surveys = new Surveys();
        answerers = new TreeMap<>(Map.ofEntries(
                Map.entry("settings/1", new SettingsAnswerer()),
                Map.entry("balance/1", new BalanceAnswerer()),
                Map.entry("light/1", new LightAnswerer()),
                Map.entry("measure/1", new MeasureAnswerer(surveys)),
                Map.entry("parts/1", new PartsAnswerer(surveys)),
                Map.entry("wash/1", new WashAnswerer(surveys)),
                Map.entry("blend/1", new BlendAnswerer(surveys)),
                Map.entry("wish/1", new WishAnswerer(surveys)),
                Map.entry("preview/1", new PreviewAnswerer(surveys)),
                Map.entry("sky/1", new SkyAnswerer()),
                Map.entry("tide/1", new TideAnswerer()),
                Map.entry("when/1", new WhenAnswerer()),
                Map.entry("guess/1", new GuessAnswerer())));
    }

    /**
     * Answers one request.
     *
     * @param json the request; its {@code schema} says which command is asked
     * @param blobs frames that the request names; pictures of the answer are added
     * @throws RequestException when a field is missing, unknown or out of range
     * @throws Work.Cancelled when {@code work} was cancelled
     */
    public String answer(String json, Blobs blobs, Work work) {
        JsonObject request;
        try {
            request = JsonParser.object().from(json);
        } catch (JsonParserException e) {
            throw new RequestException("request", "is not a JSON object: " + e.getMessage());
        }
        String schema = request.getString("schema", "");
        Answerer answerer = answerers.get(schema);
        if (answerer == null) {
            throw new RequestException("schema", "\"" + schema + "\" is not known; known are " + answerers.keySet());
        }
        JsonObject answer = new JsonObject();
        answer.put("schema", schema);
        answer.putAll(answerer.answer(request, blobs, work));
        return JsonWriter.string(answer);
    }

    /** Answers the requests of one schema. */
    interface Answerer {
        JsonObject answer(JsonObject request, Blobs blobs, Work work);
    }
}
