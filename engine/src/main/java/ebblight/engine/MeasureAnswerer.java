package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.Horizon;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.PartPlaces;
import ebblight.core.motion.RegionMotion;
import ebblight.core.motion.Remaining;
import ebblight.core.motion.Rhythm;
import ebblight.core.motion.StripCrop;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.core.wish.Demand;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Answers {@code measure/1}: how the parts of a view move. */
final class MeasureAnswerer implements Engine.Answerer {

    /** A piece of a test strip shows this share of the picture's width, wider than high by the aspect. */
    private static final double STRIP_WIDTH = 170.0 / 1280;

    private static final double STRIP_ASPECT = 170.0 / 92;

    /** No source has more frames, frames a second, or pixels a side. */
    private static final int MOST = 100_000_000;

    private final Surveys surveys;

    MeasureAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        Fields frames = request.part("frames");
        Surveys.Kept kept = surveys.of(request, blobs, work);
        ViewSurvey survey = kept.survey();
        double scale = Surveys.scale(request);
        JsonObject answer = new JsonObject();
        boolean spaced = Surveys.spaced(request);
        answer.put("mode", kept.stills().isPresent() ? "stills" : spaced ? "spaced" : "clip");
        kept.stills().ifPresent(stills -> answer.put("exposureSeconds", Json.array(stills.seconds())));
        answer.put("frames", frames.whole("sourceFrames", survey.clip().frames(), 1, MOST));
        answer.put(
                "fps", Json.number(frames.number("sourceFps", 1 / survey.clip().spacingSeconds(), 0, MOST)));
        answer.put("width", frames.whole("sourceWidth", survey.clip().width(), 1, MOST));
        answer.put("height", frames.whole("sourceHeight", survey.clip().height(), 1, MOST));
        answer.put("surveyFrames", survey.clip().frames());
        answer.put("surveyWidth", survey.clip().width());
        answer.put("seconds", survey.clip().lengthSeconds());
        answer.put("camera", survey.camera().verdict().name().toLowerCase(Locale.ROOT));
        answer.put("cameraShiftPixels", Json.number(survey.camera().rmsPixels() * scale));
        JsonArray regions = new JsonArray();
        JsonArray warnings = new JsonArray();
        if (survey.hasParts()) {
            answer.put("fadingStopsPerMinute", Json.number(survey.fadingStopsPerMinute()));
            Measurement measurement = kept.measurement(work);
            int[][] places = PartPlaces.of(survey.map());
            for (int k = 0; k < places.length; k++) {
                RegionMotion region = measurement.regions().get(k);
                JsonObject one = region(region, scale);
                one.put("place", PartsAnswerer.place(places[k], survey));
                one.put("left", Left.listed(region));
                one.put("words", words(region, survey));
                one.put("crop", crop(survey, k));
                regions.add(one);
            }
            answer.put("horizon", horizon(survey));
            warnings.addAll(Warnings.of(measurement, spaced));
            if (request.has("regionsBlob")) {
                blobs.put(request.text("regionsBlob"), PartsAnswerer.map(survey));
            }
        } else {
            warnings.addAll(Warnings.of(survey.camera()));
        }
        answer.put("regions", regions);
        answer.put("warnings", warnings);
        return answer;
    }

    private static JsonObject region(RegionMotion region, double scale) {
        JsonObject one = new JsonObject();
        one.put("id", region.part().id());
        one.put("kind", region.part().kind().word());
        one.put("areaFraction", region.part().areaFraction());
        one.put("texture", Json.number(region.texture()));
        one.put("standing", Json.number(region.standing()));
        one.put(
                "correlationSeconds",
                region.remaining().isEmpty() || !region.flags().seen()
                        ? null
                        : Json.number(region.correlationSeconds()));
        one.put(
                "driftPixelsPerSecond",
                region.velocity()
                        .map(v -> Json.array(v.x() * scale, v.y() * scale))
                        .orElse(null));
        one.put(
                "driftRelativeError",
                region.velocity().map(v -> Json.number(v.relativeError())).orElse(null));
        JsonArray remaining = new JsonArray();
        for (Remaining r : region.remaining()) {
            JsonObject entry = new JsonObject();
            entry.put("seconds", r.seconds());
            entry.put("ratio", r.ratio());
            entry.put("low", r.low());
            entry.put("high", r.high());
            entry.put("basis", r.basis().name().toLowerCase(Locale.ROOT).replace('_', ' '));
            remaining.add(entry);
        }
        one.put("remaining", remaining);
        double period = region.rhythm().periodSeconds();
        one.put("wavePeriodSeconds", period > 0 ? period : null);
        JsonArray lulls = new JsonArray();
        for (Rhythm.Lull lull : region.rhythm().lulls()) {
            lulls.add(Json.array(lull.fromSeconds(), lull.toSeconds()));
        }
        one.put("lulls", lulls);
        double lines = region.lines().seconds();
        one.put("linesSeconds", lines > 0 ? lines : null);
        one.put("confidence", region.part().confidence());
        one.put("resolved", region.flags().resolved());
        one.put("breakers", region.flags().breakers());
        one.put("seen", region.flags().seen());
        return one;
    }

    /** What each word that fits a part asks of the shutter time. */
    private static JsonArray words(RegionMotion region, ViewSurvey survey) {
        JsonArray words = new JsonArray();
        for (Demand demand :
                Demand.ofEveryWord(region, survey.clip().width(), survey.clip().height())) {
            JsonObject one = new JsonObject();
            one.put("word", demand.wish().word().text());
            one.put("likely", Spans.array(demand.likely()));
            one.put("sure", Spans.array(demand.sure()));
            one.put("note", demand.note());
            words.add(one);
        }
        return words;
    }

    /** The patch of a part for its test strip, as fractions of the whole picture. */
    private static JsonObject crop(ViewSurvey survey, int part) {
        RgbPicture one = RgbPicture.black(survey.map().width(), survey.map().height());
        survey.clip().channel(survey.clip().frames() / 2, 1, one.green());
        StripCrop crop = StripCrop.of(survey.map(), part, one, STRIP_WIDTH, STRIP_ASPECT);
        double across = survey.map().width() + 2.0 * survey.crop();
        double down = survey.map().height() + 2.0 * survey.crop();
        JsonObject json = new JsonObject();
        json.put("left", (crop.left() * survey.map().width() + survey.crop()) / across);
        json.put("top", (crop.top() * survey.map().height() + survey.crop()) / down);
        json.put("width", crop.width() * survey.map().width() / across);
        json.put("height", crop.height() * survey.map().height() / down);
        return json;
    }

    /** Where the horizon meets the left and right edge, as fractions of the height, and its tilt. */
    private static @Nullable JsonObject horizon(ViewSurvey survey) {
        if (survey.horizon().isEmpty()) {
            return null;
        }
        Horizon line = survey.horizon().get();
        double height = survey.map().height() + 2.0 * survey.crop();
        JsonObject one = new JsonObject();
        one.put("left", (line.left() + survey.crop()) / height);
        one.put("right", (line.right() + survey.crop()) / height);
        one.put(
                "tiltDegrees",
                180
                        / Math.PI
                        * StrictMath.atan2(
                                line.left() - line.right(), survey.map().width()));
        return one;
    }
}
