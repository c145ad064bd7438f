package ebblight.pocket;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import org.teavm.jso.JSExport;
import org.teavm.jso.typedarrays.Int8Array;

/** The engine inside a page: frames and requests in, documents and pictures out. */
public final class Pocket {

    private static final Engine ENGINE = new Engine();
    private static Blobs blobs = new Blobs();

    private Pocket() {}

    /** Called when the page starts the module; there is nothing to do before the first request. */
    public static void main(String[] args) {}

    /** Hands over bytes that requests name; frames of one clip are NAME/0, NAME/1, …. */
    @JSExport
    public static void put(String name, Int8Array bytes) {
        blobs.put(name, bytes.copyToJavaArray());
    }

    /** Bytes that an answer named. */
    @JSExport
    public static Int8Array get(String name) {
        return Int8Array.copyFromJavaArray(blobs.get(name).orElseGet(() -> new byte[0]));
    }

    /** Lets go of all bytes handed over or made. */
    @JSExport
    public static void forget() {
        blobs = new Blobs();
    }

    /** Answers one request of the engine; what is wrong with it comes as {@code problem}. */
    @JSExport
    public static String answer(String request) {
        try {
            return ENGINE.answer(request, blobs, Work.alone());
        } catch (RequestException e) {
            JsonObject problem = new JsonObject();
            problem.put("problem", e.getMessage());
            return JsonWriter.string(problem);
        }
    }
}
