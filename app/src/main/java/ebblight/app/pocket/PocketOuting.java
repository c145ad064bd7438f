package ebblight.app.pocket;

import com.grack.nanojson.JsonObject;
import ebblight.app.plan.PlannedWater;
import ebblight.app.plan.WeatherFile;
import java.io.IOException;
import java.nio.file.Path;

/** What a phone is given of an outing: its document, the bag, and the rows of what the desk looks up elsewhere. */
public final class PocketOuting {

    private PocketOuting() {}

    /**
     * The outing as the phone page takes it.
     *
     * @param folder against which the outing's files are named
     */
    public static JsonObject of(JsonObject outing, JsonObject kit, Path folder) throws IOException {
        JsonObject packed = new JsonObject();
        packed.put("schema", "pocket-outing/1");
        packed.put("outing", outing);
        packed.put("kit", kit);
        packed.putAll(PlannedWater.of(outing, folder));
        JsonObject plan = outing.getObject("plan", new JsonObject());
        if (plan.isString("weather")) {
            packed.put("weather", WeatherFile.read(folder.resolve(plan.getString("weather"))));
        }
        return packed;
    }
}
