package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Work;
import ebblight.engine.Floats;
import ebblight.engine.RequestException;
import ebblight.imaging.BlendLayer;
import ebblight.imaging.BlendResult;
import ebblight.imaging.Blender;
import ebblight.imaging.GreyPng;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.Placed;
import ebblight.imaging.ShareGrid;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A picture whose parts have a shutter time each, blended at full size and written. */
public final class BlendPicture {

    private static final String SHARES = "shares";

    private final SurveyRequest request;
    private final JsonObject answer;
    private final ShareGrid grid;

    private BlendPicture(SurveyRequest request, JsonObject answer) {
        this.request = request;
        this.answer = answer;
        this.grid = new ShareGrid(answer.getInt("width"), answer.getInt("height"), answer.getInt("crop"));
    }

    /**
     * Asks which frames each part is made of, blends and writes them. Nothing is written when a part's time cannot be
     * had: then the answer has a conflict and ways out, and no file.
     *
     * @param parts what each region shall be made of, as blend/1 holds it
     * @param masks folder for the masks, or null when they are not wanted
     */
    public static JsonObject write(SurveyRequest request, JsonArray parts, Path output, @Nullable Path masks, Work work)
            throws IOException {
        JsonObject more = new JsonObject();
        more.put("parts", parts);
        more.put("sharesBlob", SHARES);
        JsonObject answer = request.ask("blend/1", more, work);
        if (answer.get("conflict") instanceof JsonObject) {
            return answer;
        }
        BlendPicture picture = new BlendPicture(request, answer);
        picture.write(output, masks, work);
        answer.remove("placements");
        return answer;
    }

    private void write(Path output, @Nullable Path masks, Work work) throws IOException {
        JsonArray layers = answer.getArray("layers");
        List<BlendLayer> asked = new ArrayList<>();
        for (int k = 0; k < layers.size(); k++) {
            asked.add(layer(layers.getObject(k), k));
        }
        Placed placed = new Placed(
                PreviewPicture.placements(answer),
                request.frames().sourceIndices(),
                request.frames().clip().width());
        float[] still = plane(layers.size());
        BlendResult result = Blender.blend(request.source(), asked, still, grid, placed, work);
        PictureFacts facts = PictureFacts.of(
                result.facts(),
                result.seconds(),
                result.frames(),
                request.source().files(),
                description());
        PictureOutput.write(output, result.picture(), facts, work);
        int width = result.picture().width();
        int height = result.picture().height();
        for (int k = 0; k < layers.size(); k++) {
            describe(layers.getObject(k), result.layers().get(k));
        }
        if (masks != null) {
            writeMasks(masks, result, width, height);
        }
        answer.put("file", output.toString());
        answer.put("frames", result.frames());
        answer.put("width", width);
        answer.put("height", height);
    }

    private BlendLayer layer(JsonObject one, int k) {
        StackOptions.As as = StackOptions.As.valueOf(one.getString("as").toUpperCase(Locale.ROOT));
        double from = one.getDouble("fromSeconds", 0);
        double until = one.getDouble("untilSeconds", Double.POSITIVE_INFINITY);
        int frame = -1;
        if (one.isNumber("number")) {
            frame = one.getInt("number") - 1;
            if (frame >= request.frames().sourceFrames()) {
                throw new RequestException(
                        "parts",
                        "frame " + one.getInt("number") + " is wished for " + String.join(", ", names(one))
                                + ", and there are " + request.frames().sourceFrames());
            }
        } else if (one.isNumber("frame")) {
            frame = request.frames().sourceIndices()[one.getInt("frame")];
            one.put("number", frame + 1);
        }
        one.remove("frame");
        return new BlendLayer(as, from, until, frame, plane(k), one.getDouble("edge"));
    }

    private float[] plane(int index) {
        byte[] planes = request.blobs()
                .get(SHARES)
                .orElseThrow(() -> new IllegalStateException("the engine left out the shares"));
        return Floats.plane(planes, index, grid.width() * grid.height());
    }

    private static List<String> names(JsonObject layer) {
        return layer.getArray("regions").stream().map(String::valueOf).toList();
    }

    private static void describe(JsonObject one, BlendResult.Layer layer) {
        one.remove("untilSeconds");
        one.put("frames", layer.frames());
        one.put("seconds", layer.seconds().isPresent() ? layer.seconds().getAsDouble() : null);
        Optional<StackResult.Gaps> gaps = layer.gaps();
        if (gaps.isPresent()) {
            JsonObject said = new JsonObject();
            said.put("count", gaps.get().count());
            said.put("seconds", gaps.get().seconds());
            said.put("longestSeconds", gaps.get().longestSeconds());
            one.put("gaps", said);
        } else {
            one.put("gaps", null);
        }
        JsonArray gains = new JsonArray();
        for (double gain : layer.gains()) {
            gains.add(gain);
        }
        one.put("gains", gains);
    }

    private void writeMasks(Path folder, BlendResult result, int width, int height) throws IOException {
        Files.createDirectories(folder);
        JsonArray layers = answer.getArray("layers");
        int covered = layers.size() + 1;
        for (int k = 0; k < layers.size(); k++) {
            JsonObject one = layers.getObject(k);
            String name = names(one).get(0);
            Path mask = folder.resolve("mask-" + name + ".png");
            GreyPng.write(mask, result.layers().get(k).mask(), width, height);
            one.put("maskFile", mask.toString());
            if (one.has("longestCovered")) {
                Path share = folder.resolve("covered-" + name + ".png");
                GreyPng.write(share, bytes(plane(covered++)), grid.width(), grid.height());
                one.put("coveredFile", share.toString());
            }
        }
    }

    private static byte[] bytes(float[] share) {
        byte[] bytes = new byte[share.length];
        for (int p = 0; p < bytes.length; p++) {
            bytes[p] = (byte) Math.round(255 * Math.max(0, Math.min(1, share[p])));
        }
        return bytes;
    }

    private String description() {
        StringBuilder text = new StringBuilder("Blend of ");
        for (JsonObject one : Asked.rows(answer.getArray("layers"))) {
            text.append(text.length() > 9 ? ", " : "")
                    .append(String.join(" and ", names(one)))
                    .append(": ")
                    .append(
                            one.isNumber("wantedSeconds")
                                    ? Words.time(one.getDouble("wantedSeconds"))
                                    : one.getString("of"));
        }
        return text.toString();
    }
}
