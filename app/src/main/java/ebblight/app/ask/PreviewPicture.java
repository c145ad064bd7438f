package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.Placement;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Floats;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FullPreview;
import ebblight.imaging.Inputs;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.SurveyFrames;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A preview at full size, written as a picture. */
public final class PreviewPicture {

    private PreviewPicture() {}

    /**
     * Asks for the preview, composes it at full size and writes it.
     *
     * @param time as typed: 1/60, 0.8s, 30s
     * @param asked further fields of the request, such as strokes
     */
    public static JsonObject write(SurveyRequest request, String time, JsonObject asked, Path output, Work work)
            throws IOException {
        JsonObject answer = request.ask("preview/1", withPictures(asked, time), work);
        RgbPicture full = composed(request, answer, work);
        double seconds = answer.getDouble("seconds");
        String description = "Preview of an exposure of " + Words.time(seconds) + ", " + answer.getString("method");
        PictureFacts facts = PictureFacts.of(
                request.source().facts(),
                OptionalDouble.of(seconds),
                answer.getInt("frames"),
                request.source().files(),
                description);
        PictureOutput.write(output, CodedPicture.srgb(full, work), facts, work);
        answer.put("file", output.toString());
        answer.remove("placements");
        answer.put("width", full.width());
        answer.put("height", full.height());
        return answer;
    }

    /** A request for the preview of a time together with all that is needed to lay it over a larger mean. */
    public static JsonObject withPictures(JsonObject asked, String time) {
        JsonObject more = new JsonObject();
        more.putAll(asked);
        more.put("time", time);
        more.put("pictureBlob", "picture");
        more.put("detailBlob", "detail");
        more.put("meanBlob", "mean");
        return more;
    }

    private static RgbPicture composed(SurveyRequest request, JsonObject answer, Work work) throws IOException {
        SurveyFrames survey = request.frames();
        if (answer.isNumber("baseFrame")) {
            return laidOver(levelledFrame(request, answer, work), request.blobs(), answer, survey, work);
        }
        RgbPicture mean = FullPreview.mean(
                request.source(),
                fromFrames(answer) ? answer.getDouble("seconds") : Double.POSITIVE_INFINITY,
                placements(answer),
                survey.sourceIndices(),
                survey.clip().width(),
                work);
        return fromFrames(answer) ? mean : laidOver(mean, request.blobs(), answer, survey, work);
    }

    /** The frame that a preview from stills starts from, at full size, brought to the light it was levelled to. */
    private static RgbPicture levelledFrame(SurveyRequest request, JsonObject answer, Work work) throws IOException {
        SurveyFrames survey = request.frames();
        int base = answer.getInt("baseFrame");
        Path file = request.source().files().get(survey.sourceIndices()[base]);
        List<Placement> placements = placements(answer);
        RgbPicture frame = FullPreview.mean(
                Inputs.open(List.of(file), 0, false),
                Double.POSITIVE_INFINITY,
                base < placements.size() ? List.of(placements.get(base)) : List.of(),
                new int[] {0},
                survey.clip().width(),
                work);
        int w = survey.clip().width() - 2 * answer.getInt("crop");
        int h = survey.clip().height() - 2 * answer.getInt("crop");
        RgbPicture levelled = picture(request.blobs(), "mean", w, h);
        for (int c = 0; c < 3; c++) {
            float gain = (float) (mean(levelled.plane(c)) / Math.max(mean(frame.plane(c)), 1e-6));
            for (int p = 0; p < frame.plane(c).length; p++) {
                frame.plane(c)[p] *= gain;
            }
        }
        return frame;
    }

    private static double mean(float[] plane) {
        double sum = 0;
        for (float v : plane) {
            sum += v;
        }
        return sum / plane.length;
    }

    /** Whether the answer is a plain mean of frames. */
    public static boolean fromFrames(JsonObject answer) {
        return answer.getString("method").toLowerCase(Locale.ROOT).startsWith("mean");
    }

    /** Where the survey frames lay; empty for a camera that stood still. */
    public static List<Placement> placements(JsonObject answer) {
        List<Placement> placements = new ArrayList<>();
        for (Object row : answer.getArray("placements")) {
            JsonArray q = (JsonArray) row;
            placements.add(new Placement(q.getDouble(0), q.getDouble(1), q.getDouble(2)));
        }
        return placements;
    }

    /** Lays the predicted picture of the answer over {@code mean}, which becomes the result. */
    public static RgbPicture laidOver(RgbPicture mean, Blobs blobs, JsonObject answer, SurveyFrames survey, Work work) {
        int w = survey.clip().width() - 2 * answer.getInt("crop");
        int h = survey.clip().height() - 2 * answer.getInt("crop");
        return FullPreview.compose(
                mean,
                picture(blobs, "picture", w, h),
                picture(blobs, "mean", w, h),
                Floats.plane(bytes(blobs, "detail"), 0, w * h),
                answer.getInt("crop"),
                work);
    }

    private static byte[] bytes(Blobs blobs, String name) {
        return blobs.get(name).orElseThrow(() -> new IllegalStateException("the engine left out " + name));
    }

    /** A picture of the answer among its blobs. */
    public static RgbPicture picture(Blobs blobs, String name, int w, int h) {
        byte[] bytes = bytes(blobs, name);
        return RgbPicture.of(
                w, h, Floats.plane(bytes, 0, w * h), Floats.plane(bytes, 1, w * h), Floats.plane(bytes, 2, w * h));
    }
}
