package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.motion.Placement;
import ebblight.core.motion.Preview;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * Answers {@code preview/1}: the picture at any time, at survey width, and what a full-size mean needs to become it.
 * Pictures go out as blobs of 32-bit floats, plane by plane, little-endian: red, green, blue, linear light.
 */
final class PreviewAnswerer implements Engine.Answerer {

    private final Surveys surveys;

    PreviewAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        double seconds = Checked.of("time", () -> ShutterTime.parse(request.text("time")));
        Surveys.Kept kept = surveys.of(request, blobs, work);
        Preview preview = kept.preview(work);
        Preview.Exposure exposure = preview.render(seconds);
        RgbPicture picture = exposure.picture();
        JsonObject answer = new JsonObject();
        answer.put("seconds", seconds);
        answer.put("method", exposure.fromFrames() ? "mean of frames" : "predicted");
        int base = preview.baseFrame(seconds);
        answer.put("baseFrame", base < 0 ? null : kept.requestFrame(base));
        answer.put(
                "frames",
                exposure.fromFrames()
                        ? preview.framesFor(seconds)
                        : kept.survey().clip().frames());
        answer.put("clipSeconds", preview.lengthSeconds());
        answer.put("knownFraction", exposure.knownFraction());
        answer.put("width", picture.width());
        answer.put("height", picture.height());
        answer.put("crop", kept.survey().crop());
        JsonArray placements = new JsonArray();
        for (Placement q : kept.survey().placements()) {
            placements.add(Json.array(q.dx(), q.dy(), q.angle()));
        }
        answer.put("placements", placements);
        if (request.has("pictureBlob")) {
            blobs.put(request.text("pictureBlob"), Floats.bytes(picture.red(), picture.green(), picture.blue()));
        }
        if (request.has("detailBlob")) {
            blobs.put(request.text("detailBlob"), Floats.bytes(exposure.detail()));
        }
        if (request.has("meanBlob")) {
            RgbPicture mean = preview.base(seconds);
            blobs.put(request.text("meanBlob"), Floats.bytes(mean.red(), mean.green(), mean.blue()));
        }
        return answer;
    }
}
