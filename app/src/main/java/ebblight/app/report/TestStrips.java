package ebblight.app.report;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.motion.StripCrop;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The same patch of every part at fourteen times, one a stop, and at the chosen time.
 *
 * @param jpegs by region
 * @param raised by region: by how much the contrast was raised
 */
public record TestStrips(Map<String, byte[]> jpegs, Map<String, Double> raised) {

    private static final int STOPS = AxisPlaces.LAST_STOP - AxisPlaces.FIRST_STOP + 1;
    static final int PIECES = STOPS + 1;

    static TestStrips of(SurveyRequest survey, JsonObject measured, double chosenSeconds, Work work)
            throws IOException {
        List<JsonObject> rows = AxisReading.rows(measured);
        List<StripSprite> sprites = new ArrayList<>();
        rows.forEach(region -> sprites.add(new StripSprite(PIECES)));
        for (int i = 0; i < PIECES; i++) {
            work.check();
            work.progress((double) i / PIECES, "exposing the test strips");
            Shown shown = Shown.at(survey, i < STOPS ? Math.pow(2, AxisPlaces.FIRST_STOP + i) : chosenSeconds, work);
            for (int k = 0; k < rows.size(); k++) {
                sprites.get(k).add(i, shown.picture(), inside(rows.get(k).getObject("crop"), shown));
            }
        }
        Map<String, byte[]> jpegs = new LinkedHashMap<>();
        Map<String, Double> raised = new HashMap<>();
        for (int k = 0; k < rows.size(); k++) {
            String id = rows.get(k).getString("id");
            sprites.get(k).raise();
            jpegs.put(id, sprites.get(k).jpeg(work));
            raised.put(id, sprites.get(k).raised());
        }
        return new TestStrips(jpegs, raised);
    }

    /** A patch given as fractions of the whole view, as fractions of the preview without its border. */
    private static StripCrop inside(JsonObject crop, Shown shown) {
        double w = shown.picture().width();
        double h = shown.picture().height();
        double acrossWhole = w + 2 * shown.crop();
        double downWhole = h + 2 * shown.crop();
        return new StripCrop(
                Math.max(0, (crop.getDouble("left") * acrossWhole - shown.crop()) / w),
                Math.max(0, (crop.getDouble("top") * downWhole - shown.crop()) / h),
                crop.getDouble("width") * acrossWhole / w,
                crop.getDouble("height") * downWhole / h);
    }
}
