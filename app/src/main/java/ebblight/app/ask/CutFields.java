package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.imaging.ViewCut;

/** Places in requests and answers, between fractions of the picture as it was filmed and of the part that is surveyed. */
final class CutFields {

    private final ViewCut cut;

    CutFields(ViewCut cut) {
        this.cut = cut;
    }

    /** The strokes in the part that is surveyed; points outside it are dropped. */
    JsonObject strokesInside(JsonObject strokes) {
        if (cut.isWhole() || !(strokes.get("strokes") instanceof JsonArray drawn)) {
            return strokes;
        }
        JsonArray kept = new JsonArray();
        for (Object each : drawn) {
            if (each instanceof JsonObject stroke && stroke.get("points") instanceof JsonArray points) {
                JsonArray inside = pointsInside(points);
                if (!inside.isEmpty()) {
                    JsonObject moved = new JsonObject(stroke);
                    moved.put("points", inside);
                    if (stroke.isNumber("width")) {
                        moved.put("width", stroke.getDouble("width") * cut.wholeWidth() / cut.width());
                    }
                    kept.add(moved);
                }
            } else {
                kept.add(each);
            }
        }
        JsonObject moved = new JsonObject(strokes);
        moved.put("strokes", kept);
        return moved;
    }

    private JsonArray pointsInside(JsonArray points) {
        JsonArray inside = new JsonArray();
        for (Object each : points) {
            if (!(each instanceof JsonArray point) || point.size() != 2 || !point.isNumber(0) || !point.isNumber(1)) {
                inside.add(each); // the engine says what is wrong with it
                continue;
            }
            double x = cut.xInside(point.getDouble(0));
            double y = cut.yInside(point.getDouble(1));
            if (x >= 0 && x <= 1 && y >= 0 && y <= 1) {
                inside.add(pair(x, y));
            }
        }
        return inside;
    }

    /** Turns the places of an answer into fractions of the picture as it was filmed. */
    void placesOutside(JsonObject answer) {
        if (cut.isWhole()) {
            return;
        }
        JsonArray regions = answer.getArray("regions", new JsonArray());
        for (int i = 0; i < regions.size(); i++) {
            JsonObject region = regions.getObject(i);
            if (region.get("place") instanceof JsonArray place) {
                region.put("place", pair(cut.xOutside(place.getDouble(0)), cut.yOutside(place.getDouble(1))));
            }
            if (region.get("crop") instanceof JsonObject crop) {
                crop.put("left", cut.xOutside(crop.getDouble("left")));
                crop.put("top", cut.yOutside(crop.getDouble("top")));
                crop.put("width", crop.getDouble("width") * cut.width() / cut.wholeWidth());
                crop.put("height", crop.getDouble("height") * cut.height() / cut.wholeHeight());
            }
        }
        if (answer.get("horizon") instanceof JsonObject line) {
            line.put("left", cut.yOutside(line.getDouble("left")));
            line.put("right", cut.yOutside(line.getDouble("right")));
        }
    }

    private static JsonArray pair(double x, double y) {
        JsonArray pair = new JsonArray();
        pair.add(x);
        pair.add(y);
        return pair;
    }
}
