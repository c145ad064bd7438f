package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.HighestWash;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;

/**
 * Answers {@code wash/1}: how far the water came up while frames of a shore were taken. With {@code riseMetres} (of the
 * tide until one leaves) and {@code washMetres} (of the highest wash above the usual water, by eye) also how far the
 * same wash would come then, if the ground goes on as steep as it is. Bytes of {@code washBlob}: 0 not reached, 1 water,
 * 2 reached, 3 reached with the rise.
 */
final class WashAnswerer implements Engine.Answerer {

    /** Shorter watches miss whole sets of waves (common practice). */
    private static final double LEAST_SECONDS = 280;

    private static final double MOST_METRES = 20;

    private final Surveys surveys;

    WashAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        ViewSurvey survey = surveys.of(request, blobs, work).survey();
        if (!survey.hasParts()) {
            throw new RequestException(
                    "frames", "the camera moved too far to see how far the water came; put it on something firm");
        }
        double rise = request.number("riseMetres", 0, 0, MOST_METRES);
        double height = request.number("washMetres", 0, 0, MOST_METRES);
        HighestWash wash = HighestWash.of(survey);
        boolean risen = rise > 0 && height > 0;
        byte[] places = risen ? wash.places(rise / height, survey.map().width()) : wash.places();
        JsonObject answer = new JsonObject();
        double seconds = survey.clip().timeSeconds(survey.clip().frames() - 1)
                - survey.clip().timeSeconds(0);
        answer.put("watchedSeconds", seconds);
        answer.put("frames", survey.clip().frames());
        answer.put(
                "highestAtSeconds",
                survey.clip().timeSeconds(wash.highestFrame()) - survey.clip().timeSeconds(0));
        answer.put("waterFraction", share(places, HighestWash.WATER));
        answer.put("washedFraction", share(places, HighestWash.WASHED));
        answer.put("withRiseFraction", risen ? share(places, HighestWash.WITH_RISE) : null);
        answer.put("cautions", cautions(seconds, share(places, HighestWash.WATER) > 0));
        if (request.has("washBlob")) {
            blobs.put(request.text("washBlob"), PartsAnswerer.whole(places, survey));
        }
        return answer;
    }

    private static double share(byte[] places, byte what) {
        int count = 0;
        for (byte each : places) {
            count += each == what ? 1 : 0;
        }
        return (double) count / places.length;
    }

    private static JsonArray cautions(double seconds, boolean water) {
        JsonArray all = new JsonArray();
        if (!water) {
            all.add("no moving water was found in these frames; stroke the water, or watch again with more of it in"
                    + " the picture");
        }
        if (seconds < LEAST_SECONDS) {
            all.add("watched for " + Rounding.up(seconds / 6) / 10.0 + " min only: whole sets of waves are missing");
        }
        all.add("sets of larger waves than these come without warning; the line is no limit of what the sea does");
        all.add("tables leave out weather, surge and waves; follow official tables, local warnings and signs; never"
                + " turn your back on the sea");
        return all;
    }
}
