package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.blend.BlendLayers;
import ebblight.core.blend.BurstTime;
import ebblight.core.blend.Covered;
import ebblight.core.blend.Lull;
import ebblight.core.blend.Taken;
import ebblight.core.motion.Clip;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Placement;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Answers {@code blend/1}: which frames each region of a picture is made of, and where its regions lie. Shares go out as
 * one blob of 32-bit floats, one plane a layer in order, then the share of what stands still and, of every layer that
 * people pass through, the share of time that each place is covered.
 */
final class BlendAnswerer implements Engine.Answerer {

    private final Surveys surveys;

    BlendAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        List<BlendLayers.Part> parts = BlendFields.parts(request);
        Fields frames = request.part("frames");
        Surveys.Kept kept = surveys.of(request, blobs, work);
        ViewSurvey survey = kept.survey();
        kept.measurement(work);
        double[] instants = frames.numbers("timesSeconds");
        BurstTime burst = BurstTime.of(instants, Surveys.exposures(frames, instants.length));
        BlendLayers dealt = Checked.of("parts", () -> BlendLayers.of(parts, survey, burst, work));
        JsonObject answer = new JsonObject();
        answer.put("burstSeconds", Json.number(burst.seconds()));
        JsonArray ways = BlendWays.of(dealt, burst, kept.stills().isPresent());
        if (!ways.isEmpty()) {
            answer.put(
                    "conflict", BlendWays.conflict(dealt, burst, kept.stills().isPresent()));
            answer.put("ways", ways);
            return answer;
        }
        answer.put("conflict", null);
        answer.put("ways", ways);
        List<float[]> planes = new ArrayList<>();
        JsonArray layers = new JsonArray();
        for (int k = 0; k < dealt.layers().size(); k++) {
            planes.add(dealt.mask(k));
        }
        planes.add(still(survey));
        for (int k = 0; k < dealt.layers().size(); k++) {
            layers.add(layer(dealt, k, burst, kept, instants, planes, work));
        }
        answer.put("layers", layers);
        answer.put("width", survey.map().width());
        answer.put("height", survey.map().height());
        answer.put("crop", survey.crop());
        answer.put("fadingStopsPerMinute", Json.number(survey.fadingStopsPerMinute()));
        JsonArray placements = new JsonArray();
        for (Placement q : survey.placements()) {
            placements.add(Json.array(q.dx(), q.dy(), q.angle()));
        }
        answer.put("placements", placements);
        blobs.put(request.text("sharesBlob"), Floats.bytes(planes.toArray(float[][]::new)));
        return answer;
    }

    private static float[] still(ViewSurvey survey) {
        float[] still = new float[survey.map().width() * survey.map().height()];
        for (int p = 0; p < still.length; p++) {
            still[p] = survey.map().parts().get(survey.map().partAt(p)).kind() == Kind.FIXED ? 1 : 0;
        }
        return still;
    }

    private static JsonObject layer(
            BlendLayers dealt,
            int k,
            BurstTime burst,
            Surveys.Kept kept,
            double[] instants,
            List<float[]> planes,
            Work work) {
        BlendLayers.Layer layer = dealt.layers().get(k);
        JsonObject one = new JsonObject();
        one.put("regions", new JsonArray(layer.regions()));
        one.put("areaFraction", layer.areaFraction());
        one.put("edge", layer.edge());
        Clip clip = kept.survey().clip();
        Taken taken = layer.taken();
        if (taken instanceof Taken.Time time) {
            one.put("of", "time");
            one.put("as", "mean");
            one.put("wantedSeconds", time.seconds());
            one.put("fromSeconds", time.fromSeconds());
            one.put("untilSeconds", burst.untilSeconds(time));
        } else if (taken instanceof Taken.Lull) {
            work.progress(0.5, "looking for the lull");
            Lull lull = Lull.of(clip, planes.get(k), work);
            one.put("of", "lull");
            one.put("as", "mean");
            one.put("frame", frameAt(instants, clip.timeSeconds(lull.frame())));
            one.put("distance", lull.distance());
            one.put("typicalDistance", lull.typicalDistance());
        } else if (taken instanceof Taken.Frame frame) {
            one.put("of", "frame");
            one.put("as", "mean");
            one.put("number", frame.number());
        } else if (taken instanceof Taken.PeopleGone) {
            work.progress(0.6, "looking who passes");
            Covered covered = Covered.of(clip, planes.get(k), work);
            one.put("of", "people gone");
            one.put("as", covered.brighter() ? "darkest" : "median");
            one.put("coveredPlaces", covered.placesFraction());
            one.put("longestCovered", covered.most());
            planes.add(covered.share());
        } else if (taken instanceof Taken.TrailsJoined) {
            one.put("of", "trails joined");
            one.put("as", "brightest");
        } else {
            one.put("of", "whole");
            one.put("as", "mean");
        }
        return one;
    }

    /** Which frame of the request was taken at an instant. */
    private static int frameAt(double[] instants, double seconds) {
        int best = 0;
        for (int i = 1; i < instants.length; i++) {
            best = Math.abs(instants[i] - seconds) < Math.abs(instants[best] - seconds) ? i : best;
        }
        return best;
    }
}
