package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.app.cache.DiskCache;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PreviewMeans;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Previews at screen size at the thirds of a stop from 1/8 s to 1024 s. */
final class PreviewNodes {

    static final int FIRST = -9;
    static final int LAST = 30;
    static final int WIDTH = 1280;

    private final SurveyRequest request;
    private final String identity;
    private @Nullable PreviewMeans means;

    /** Previews of frames whose files {@code identity} stands for. */
    PreviewNodes(SurveyRequest request, String identity) {
        this.request = request;
        this.identity = identity;
    }

    static double seconds(int node) {
        return Math.pow(2, node / 3.0);
    }

    /** The picture of an exposure of {@code seconds}, in linear sRGB light; {@code facts} receives the answer. */
    private RgbPicture picture(double seconds, JsonObject asked, JsonObject facts, Work work) throws IOException {
        JsonObject answer = request.ask("preview/1", PreviewPicture.withPictures(asked, seconds + "s"), work);
        PreviewMeans known = means;
        if (known == null) {
            double[] times = new double[LAST - FIRST + 1];
            for (int k = 0; k < times.length; k++) {
                times[k] = seconds(FIRST + k);
            }
            known = PreviewMeans.of(
                    request.source(),
                    WIDTH,
                    times,
                    PreviewPicture.placements(answer),
                    request.frames().sourceIndices(),
                    request.frames().clip().width(),
                    work);
            means = known;
        }
        answer.remove("placements");
        facts.putAll(answer);
        return PreviewPicture.fromFrames(answer)
                ? known.at(seconds)
                : PreviewPicture.laidOver(known.ofAll(), request.blobs(), answer, request.frames(), work);
    }

    /** Where the cache keeps the picture of a node. */
    String name(int node, JsonObject asked) {
        return DiskCache.name(".jpg", identity, JsonWriter.string(asked), "node " + node);
    }

    private String factsName(int node, JsonObject asked) {
        return DiskCache.name(".json", identity, JsonWriter.string(asked), "facts " + node);
    }

    /** Makes sure that the cache has the picture of a node, and returns what the engine said of it. */
    JsonObject kept(int node, JsonObject asked, DiskCache cache, Work work) throws IOException {
        byte[] known = cache.get(factsName(node, asked)).orElse(null);
        if (known != null && cache.has(name(node, asked))) {
            return Asked.parse(new String(known, StandardCharsets.UTF_8));
        }
        JsonObject facts = new JsonObject();
        RgbPicture picture = picture(seconds(node), asked, facts, work);
        facts.put("width", picture.width());
        facts.put("height", picture.height());
        byte[] jpeg = JpegWriter.encode(
                CodedPicture.srgb(picture, work),
                PictureFacts.of(
                        request.source().facts(),
                        OptionalDouble.of(seconds(node)),
                        1,
                        List.of(),
                        "Preview of an exposure of " + Words.time(seconds(node))));
        cache.put(name(node, asked), jpeg);
        cache.put(factsName(node, asked), JsonWriter.string(facts).getBytes(StandardCharsets.UTF_8));
        return facts;
    }
}
