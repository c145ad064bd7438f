package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.PartPlaces;
import ebblight.core.motion.RegionMap;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.Work;
import org.jspecify.annotations.Nullable;

/**
 * Answers {@code parts/1}: which parts the picture has, as strokes correct them, before anything of them is measured. A
 * stroke over frames that were surveyed is answered at once.
 */
final class PartsAnswerer implements Engine.Answerer {

    private final Surveys surveys;

    PartsAnswerer(Surveys surveys) {
        this.surveys = surveys;
    }

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        ViewSurvey survey = surveys.of(request, blobs, work).survey();
        JsonArray regions = new JsonArray();
        if (survey.hasParts()) {
            int[][] places = PartPlaces.of(survey.map());
            for (int k = 0; k < places.length; k++) {
                RegionMap.Part part = survey.map().parts().get(k);
                JsonObject one = new JsonObject();
                one.put("id", part.id());
                one.put("kind", part.kind().word());
                one.put("areaFraction", part.areaFraction());
                one.put("confidence", part.confidence());
                one.put("place", place(places[k], survey));
                regions.add(one);
            }
            if (request.has("regionsBlob")) {
                blobs.put(request.text("regionsBlob"), map(survey));
            }
        }
        JsonObject answer = new JsonObject();
        answer.put("regions", regions);
        return answer;
    }

    /** A pixel as fractions of the whole picture. */
    static @Nullable JsonArray place(int[] pixel, ViewSurvey survey) {
        int crop = survey.crop();
        return pixel[0] < 0
                ? null
                : Json.array(
                        (pixel[0] + crop + 0.5) / (survey.map().width() + 2.0 * crop),
                        (pixel[1] + crop + 0.5) / (survey.map().height() + 2.0 * crop));
    }

    /** Index of the region at every pixel of the whole survey picture. */
    static byte[] map(ViewSurvey survey) {
        RegionMap map = survey.map();
        byte[] parts = new byte[map.width() * map.height()];
        for (int p = 0; p < parts.length; p++) {
            parts[p] = (byte) map.partAt(p);
        }
        return whole(parts, survey);
    }

    /** A map of the survey at every pixel of the whole survey picture; a cut border takes its neighbour's value. */
    static byte[] whole(byte[] places, ViewSurvey survey) {
        RegionMap map = survey.map();
        int crop = survey.crop();
        int w = map.width() + 2 * crop;
        int h = map.height() + 2 * crop;
        byte[] out = new byte[w * h];
        for (int y = 0; y < h; y++) {
            int v = Math.max(0, Math.min(map.height() - 1, y - crop));
            for (int x = 0; x < w; x++) {
                int u = Math.max(0, Math.min(map.width() - 1, x - crop));
                out[y * w + x] = places[v * map.width() + u];
            }
        }
        return out;
    }
}
