package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.cache.DiskCache;
import ebblight.app.made.Made;
import ebblight.app.made.Making;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.OutingFolder;
import ebblight.core.numeric.Work;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Answers the requests of the engine's contract over the frames of the open outing. A request names frames by their
 * path in the outing; pictures come back as addresses of files in the cache.
 */
final class Desk {

    /** Raised when an answer of the same request would come out differently. */
    private static final String VERSION = "3";

    private static final Set<String> OF_NUMBERS = Set.of("settings/1", "light/1", "sky/1", "tide/1", "guess/1");
    private static final double MOST_FRAMES_PER_SECOND = 10_000;
    private static final String PICTURES = "/api/blobs/";

    private final OutingFolder folder;
    private final DiskCache cache;
    private final Engine numbers = new Engine();
    private @Nullable Reading reading;

    Desk(OutingFolder folder, DiskCache cache) {
        this.folder = folder;
        this.cache = cache;
    }

    /** Whether a request needs no frames and is answered at once. */
    static boolean atOnce(JsonObject request) {
        return OF_NUMBERS.contains(request.getString("schema", ""));
    }

    JsonObject numbers(JsonObject request) {
        JsonObject whole = new JsonObject();
        whole.put("answer", Asked.of(numbers, request, Work.alone()));
        return whole;
    }

    /** What stands for a request in the cache: the same for the same question about unchanged files. */
    String key(JsonObject request) throws IOException {
        return DiskCache.name(
                ".json", VERSION, JsonWriter.string(request), identity(frames(request), framesPerSecond(request)));
    }

    /** The answer from an earlier time, if it is still known whole. */
    @Nullable JsonObject known(String key) throws IOException {
        byte[] bytes = cache.get(key).orElse(null);
        if (bytes == null) {
            return null;
        }
        JsonObject whole = Asked.parse(new String(bytes, StandardCharsets.UTF_8));
        for (Object address : whole.getObject("blobs", new JsonObject()).values()) {
            if (!cache.has(String.valueOf(address).substring(PICTURES.length()))) {
                return null;
            }
        }
        return whole;
    }

    /** What lies behind an address in an answer; empty when it was put away. */
    Optional<byte[]> blob(JsonObject whole, String name) throws IOException {
        String address = whole.getObject("blobs", new JsonObject()).getString(name, "");
        return address.isEmpty() ? Optional.empty() : cache.get(address.substring(PICTURES.length()));
    }

    /** Answers a request about frames; only the one worker of the jobs calls this. */
    JsonObject answer(JsonObject request, String key, Job job) throws IOException {
        JsonObject known = known(key);
        if (known != null) {
            return known;
        }
        Reading of = read(request, job);
        JsonObject more = new JsonObject();
        more.putAll(request);
        more.remove("schema");
        more.remove("frames");
        String schema = request.getString("schema", "");
        JsonObject blobs = new JsonObject();
        JsonObject answer =
                switch (schema) {
                    case "preview/1" -> preview(of, more, blobs);
                    case "strip/1" -> new Strips(of, cache).answer(more, blobs, job);
                    case "measure/1" -> measure(of, more, blobs);
                    case "parts/1" -> withMap(schema, "regions", of, more, blobs);
                    case "wash/1" -> withMap(schema, "wash", of, more, blobs);
                    case "wish/1" -> of.ask(schema, more);
                    default -> throw new RequestException("schema", "\"" + schema + "\" is not known here");
                };
        JsonObject whole = new JsonObject();
        whole.put("answer", answer);
        whole.put("blobs", blobs);
        cache.put(key, JsonWriter.string(whole).getBytes(StandardCharsets.UTF_8));
        return whole;
    }

    /** Reads and surveys frames whose answers are known from an earlier time, so that a stroke finds them at hand. */
    JsonObject atHand(JsonObject request, Job job) throws IOException {
        Reading of = read(request, job);
        of.ask("parts/1", new JsonObject());
        return new JsonObject();
    }

    private Reading read(JsonObject request, Job job) throws IOException {
        List<Path> frames = frames(request);
        String identity = identity(frames, framesPerSecond(request));
        Reading of = reading;
        if (of == null || !of.identity().equals(identity)) {
            of = new Reading(identity, frames, framesPerSecond(request));
            of.serve(job);
            job.part(0, 0.4);
            of.request();
            reading = of;
        }
        of.serve(job);
        job.part(0.4, 1);
        return of;
    }

    private JsonObject measure(Reading of, JsonObject more, JsonObject blobs) throws IOException {
        JsonObject answer = withMap("measure/1", "regions", of, more, blobs);
        of.request().source().facts().fNumber().ifPresent(n -> answer.put("framesFNumber", n));
        of.request().source().facts().isoSpeed().ifPresent(s -> answer.put("framesIso", s));
        Optional<Remembered> outing = Remembered.around(folder.root());
        if (outing.isPresent()) {
            Remembered.tried(() -> outing.get().measured(of.request(), answer));
        }
        return answer;
    }

    /** An answer with a map beside it: the index of the part at every pixel, or how far water came. */
    private JsonObject withMap(String schema, String what, Reading of, JsonObject more, JsonObject blobs)
            throws IOException {
        JsonObject asked = new JsonObject();
        asked.putAll(more);
        asked.put(what + "Blob", what);
        JsonObject answer = of.ask(schema, asked);
        byte[] map = of.request().blobs().get(what).orElseGet(() -> new byte[0]);
        if (map.length > 0) {
            String name = DiskCache.name(".bin", of.identity(), JsonWriter.string(more), what);
            cache.put(name, map);
            blobs.put(what, PICTURES + name);
            answer.put("mapWidth", of.request().frames().clip().width());
            answer.put("mapHeight", of.request().frames().clip().height());
        }
        return answer;
    }

    private JsonObject preview(Reading of, JsonObject more, JsonObject blobs) throws IOException {
        JsonObject asked = new JsonObject();
        if (more.has("strokes")) {
            asked.put("strokes", more.get("strokes"));
        }
        int node = Math.max(PreviewNodes.FIRST, Math.min(PreviewNodes.LAST, more.getInt("node")));
        JsonObject facts = of.nodes().kept(node, asked, cache, of);
        blobs.put("picture", PICTURES + of.nodes().name(node, asked));
        return facts;
    }

    /** Writes the full-size preview into the outing as the command line would, with its record beside it. */
    JsonObject make(JsonObject request, Path made, Job job) throws IOException {
        List<Path> frames = frames(request);
        String time = request.getString("time", "");
        Reading of = reading;
        String identity = identity(frames, framesPerSecond(request));
        if (of == null || !of.identity().equals(identity)) {
            of = new Reading(identity, frames, framesPerSecond(request));
        }
        of.serve(job);
        Files.createDirectories(made);
        String name = "preview-" + String.valueOf(frames.get(0).getFileName()).replaceAll("\\W+", "-") + "-"
                + time.replaceAll("[^0-9a-z.]+", "-");
        Path output = made.resolve(name + ".jpg");
        JsonObject asked = new JsonObject();
        if (request.has("strokes")) {
            asked.put("strokes", request.get("strokes"));
        }
        JsonObject answer = PreviewPicture.write(of.request(), time, asked, output, of);
        answer.put("file", folder.relative(output));
        Made.write(output, making(of, frames, time, asked), answer, job);
        JsonObject whole = new JsonObject();
        whole.put("answer", answer);
        return whole;
    }

    /** What to type for the same. */
    private static Making making(Reading of, List<Path> frames, String time, JsonObject asked) throws IOException {
        List<String> options = new ArrayList<>(List.of("--time=" + time));
        if (of.framesPerSecond() > 0) {
            options.add("--fps=" + of.framesPerSecond());
        }
        Map<String, JsonObject> documents =
                asked.has("strokes") ? Map.of("--strokes", asked.getObject("strokes")) : Map.of();
        return new Making("preview", options, documents, Map.of(), Making.inputs(frames));
    }

    /** A clip, a folder, or some frames of a folder. */
    private List<Path> frames(JsonObject request) throws IOException {
        JsonObject frames = request.getObject("frames", new JsonObject());
        JsonArray some = frames.getArray("files", new JsonArray());
        String path = frames.getString("path", "");
        if (path.isEmpty() && some.isEmpty()) {
            throw new RequestException("frames.path", "is missing: name a clip or folder of the outing");
        }
        List<Path> named = new ArrayList<>();
        if (some.isEmpty()) {
            named.add(folder.inside(path));
        }
        for (Object each : some) {
            named.add(folder.inside(String.valueOf(each)));
        }
        return List.copyOf(named);
    }

    /** The rate that the photographer typed, in frames a second; 0 when the frames say it themselves. */
    private static double framesPerSecond(JsonObject request) {
        Object typed = request.getObject("frames").get("fps");
        if (typed == null) {
            return 0;
        }
        if (!(typed instanceof Number rate)
                || !(rate.doubleValue() > 0 && rate.doubleValue() <= MOST_FRAMES_PER_SECOND)) {
            throw new RequestException("frames.fps", "must be a number above 0 and up to 10000 frames a second");
        }
        return rate.doubleValue();
    }

    /** Names, sizes and times of the files: another value when one of them changes. */
    private static String identity(List<Path> frames, double framesPerSecond) throws IOException {
        StringBuilder text = new StringBuilder(frames + "@" + framesPerSecond);
        for (Path each : frames) {
            if (Files.isDirectory(each)) {
                try (Stream<Path> list = Files.list(each)) {
                    for (Path file : list.sorted().toList()) {
                        stamp(text, file);
                    }
                }
            } else {
                stamp(text, each);
            }
        }
        return DiskCache.name("", text.toString());
    }

    private static void stamp(StringBuilder text, Path file) throws IOException {
        text.append('|')
                .append(String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT))
                .append(Files.size(file))
                .append(Files.getLastModifiedTime(file).toMillis());
    }
}
