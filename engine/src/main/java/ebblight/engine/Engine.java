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
        answerers = new TreeMap<>(Map.of(
                "settings/1", new SettingsAnswerer(),
                "balance/1", new BalanceAnswerer(),
                "light/1", new LightAnswerer(),
                "sky/1", new SkyAnswerer(),
                "tide/1", new TideAnswerer(),
                "when/1", new WhenAnswerer(),
                "guess/1", new GuessAnswerer()));
        answerers.put("measure/1", new MeasureAnswerer(surveys));
        answerers.put("wish/1", new WishAnswerer(surveys));
        answerers.put("preview/1", new PreviewAnswerer(surveys));
        answerers.put("blend/1", new BlendAnswerer(surveys));
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
