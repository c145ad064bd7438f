package ebblight.pocket;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import java.util.function.IntConsumer;
import org.teavm.jso.JSExport;
import org.teavm.jso.JSFunctor;
import org.teavm.jso.JSObject;
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

    /** Is told how far the work is, 0 to 1, and what is being done. */
    @JSFunctor
    public interface Progress extends JSObject {
        void tell(double fraction, String stage);
    }

    /** Answers one request of the engine; what is wrong with it comes as {@code problem}. */
    @JSExport
    public static String answer(String request, Progress progress) {
        try {
            return ENGINE.answer(request, blobs, told(progress));
        } catch (RequestException e) {
            JsonObject problem = new JsonObject();
            problem.put("problem", e.getMessage());
            return JsonWriter.string(problem);
        }
    }

    /** Work on the worker's one thread; the page stops it by ending the worker. */
    private static Work told(Progress progress) {
        return new Work() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String stage) {
                progress.tell(fraction, stage);
            }

            @Override
            public void forEach(int n, IntConsumer body) {
                for (int i = 0; i < n; i++) {
                    body.accept(i);
                }
            }
        };
    }
}
