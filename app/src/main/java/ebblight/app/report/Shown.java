package ebblight.app.report;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * A preview at survey width.
 *
 * @param picture linear light
 * @param mean what the frames' own mean looks like
 * @param crop pixels cut off each side of the view
 * @param answer of {@code preview/1}
 */
public record Shown(RgbPicture picture, RgbPicture mean, int crop, JsonObject answer) {

    /** Asks for the preview of a time. */
    public static Shown at(SurveyRequest survey, double seconds, Work work) {
        JsonObject more = new JsonObject();
        more.put("time", seconds + "s");
        more.put("pictureBlob", "picture");
        more.put("meanBlob", "mean");
        JsonObject answer = survey.ask("preview/1", more, work);
        return new Shown(
                picture(survey, "picture", answer), picture(survey, "mean", answer), answer.getInt("crop"), answer);
    }

    private static RgbPicture picture(SurveyRequest survey, String name, JsonObject answer) {
        int w = answer.getInt("width");
        int h = answer.getInt("height");
        return PreviewPicture.picture(survey.blobs(), name, w, h);
    }
}
