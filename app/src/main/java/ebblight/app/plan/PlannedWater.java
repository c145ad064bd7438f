package ebblight.app.plan;

import com.grack.nanojson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;

/** The water that an outing is planned by. */
public final class PlannedWater {

    private PlannedWater() {}

    /**
     * The station's constants ({@code station}) and the rows of the typed waters ({@code table}) of an outing's document,
     * each where it has them.
     *
     * @param folder against which a file of waters is named
     */
    public static JsonObject of(JsonObject outing, Path folder) throws IOException {
        JsonObject water = new JsonObject();
        JsonObject place = outing.getObject("place", new JsonObject());
        if (place.has("station") && place.has("at")) {
            water.put("station", WishesFile.station(place));
        }
        JsonObject plan = outing.getObject("plan", new JsonObject());
        if (plan.isString("table")) {
            water.put("table", TideTableFile.read(folder.resolve(plan.getString("table"))));
        }
        return water;
    }
}
