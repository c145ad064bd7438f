package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.Balance;
import ebblight.core.exposure.BalanceWay;
import ebblight.core.motion.Clip;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/** Answers {@code balance/1}: sky against foreground in one frame. */
final class BalanceAnswerer implements Engine.Answerer {

    /** With less of the variance between the two sides than this, the picture has no clear transition. */
    private static final double CLEAR = 0.3;

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        Clip clip = Surveys.clip(request.part("frames"), blobs);
        float[] luminance = new float[clip.width() * clip.height()];
        clip.luminance(0, luminance);
        Balance balance = Checked.of("frames", () -> Balance.of(luminance, clip.width(), clip.height()));
        List<Double> graduated = new ArrayList<>();
        if (request.has("graduatedStops")) {
            for (double stops : request.numbers("graduatedStops")) {
                if (!(stops > 0 && stops <= 6)) {
                    throw new RequestException("graduatedStops", "must lie between 0 and 6 stops, was " + stops);
                }
                graduated.add(stops);
            }
        }
        JsonObject transition = new JsonObject();
        transition.put("x", balance.x());
        transition.put("y", balance.y());
        transition.put("angleDegrees", balance.angleDegrees());
        transition.put("softness", balance.softness());
        JsonObject answer = new JsonObject();
        answer.put("stops", balance.stops());
        answer.put("transition", transition);
        answer.put("clear", balance.clear());
        double clipped = request.number("clippedFraction", 0, 0, 1);
        answer.put("clippedFraction", clipped);
        JsonArray choices = new JsonArray();
        for (BalanceWay way : BalanceWay.waysOut(balance, graduated)) {
            JsonObject one = new JsonObject();
            one.put("kind", way.kind().text());
            one.put("stops", way.stops());
            one.put("leftStops", way.leftStops());
            one.put("text", way.words());
            choices.add(one);
        }
        answer.put("choices", choices);
        JsonArray warnings = new JsonArray();
        if (balance.clear() < CLEAR) {
            warnings.add("no line parts this picture clearly into sky and foreground: take the stops as a rough guess");
        }
        if (clipped > 0) {
            warnings.add("parts are clipped: the real difference is larger; meter a shorter frame");
        }
        answer.put("warnings", warnings);
        return answer;
    }
}
