package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import io.javalin.http.Context;

/** JSON in and out of requests. */
final class Replies {

    private static final long SHORT_WAIT_MILLIS = 250;
    private static final long LONGEST_WAIT_MILLIS = 25_000;

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

    /** The answer when it comes soon, else the number of the job that will have it. */
    static void job(Context context, Job job) throws Exception {
        String asked = context.queryParam("wait");
        long wait = asked == null ? SHORT_WAIT_MILLIS : Math.min(LONGEST_WAIT_MILLIS, parsed(asked));
        if (job.waitFor(wait)) {
            Exception failure = job.failure();
            if (failure instanceof Work.Cancelled) {
                JsonObject stopped = new JsonObject();
                stopped.put("stopped", true);
                json(context, stopped);
                return;
            }
            if (failure != null) {
                throw failure;
            }
            json(context, job.answer());
        } else {
            context.status(202);
            json(context, job.state());
        }
    }

    private static long parsed(String millis) {
        return millis.matches("\\d{1,6}") ? Long.parseLong(millis) : SHORT_WAIT_MILLIS;
    }

    static void jpeg(Context context, byte[] bytes, boolean forever) {
        context.header("Cache-Control", forever ? "private, max-age=31536000, immutable" : "no-cache");
        context.contentType("image/jpeg");
        context.result(bytes);
    }
}
