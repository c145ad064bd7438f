package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.Camera;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.Numbers;
import ebblight.core.light.LightModel;
import ebblight.core.numeric.Epoch;
import ebblight.core.outing.HourWindow;
import ebblight.core.outing.PackingList;
import java.util.ArrayList;
import java.util.List;

/** The packing list in {@code when/1}, from {@code kit}: {@code filters}, {@code measured}, {@code maxStack}, camera. */
final class PackingAnswer {

    private static final double STEP_SECONDS = 600;
    private static final int MOST_LIGHTS = 5000;

    private PackingAnswer() {}

    static JsonObject of(Fields kit, FrameFields frames, LightModel light, List<HourWindow> windows) {
        List<Filter> bag = BagFields.read(kit);
        Camera camera = kit.has("camera") ? CameraFields.read(kit.part("camera")) : Camera.standard();
        PackingList list = Checked.of(
                kit.path("filters"),
                () -> PackingList.of(
                        bag,
                        camera,
                        kit.whole("maxStack", 2),
                        frames.fromSeconds(),
                        frames.toSeconds(),
                        lights(light, windows)));
        JsonObject answer = new JsonObject();
        answer.put("filters", BagFields.names(list.filters()));
        answer.put("reachedFraction", list.of() == 0 ? null : Json.number((double) list.reached() / list.of()));
        answer.put("compromise", list.compromise());
        JsonArray uses = new JsonArray();
        for (PackingList.Use use : list.uses()) {
            JsonObject one = new JsonObject();
            one.put("filters", BagFields.names(use.stack()));
            one.put("from", Instants.write(use.from()));
            one.put("to", Instants.write(use.to()));
            uses.add(one);
        }
        answer.put("uses", uses);
        answer.put("missing", list.missing().map(PackingAnswer::missing).orElse(null));
        return answer;
    }

    private static JsonObject missing(PackingList.Missing missing) {
        JsonObject one = new JsonObject();
        one.put("time", Instants.write(missing.time()));
        one.put("stops", missing.stops());
        String stops = Numbers.shortest(Math.abs(missing.stops()), 1);
        one.put(
                "text",
                missing.stops() > 0
                        ? "a filter of " + stops + " stops more is missing at the sharpest apertures"
                        : "it is " + stops
                                + " stops too dark for this time at the sharpest apertures; a longer one is right"
                                + " then");
        return one;
    }

    /** The light at the start, every ten minutes, and at the end of each window. */
    private static List<PackingList.Light> lights(LightModel light, List<HourWindow> windows) {
        double seconds = 0;
        for (HourWindow window : windows) {
            seconds += 60.0 * window.minutes() + 2 * STEP_SECONDS;
        }
        double step = STEP_SECONDS * Math.max(1, Math.ceil(seconds / STEP_SECONDS / MOST_LIGHTS));
        List<PackingList.Light> lights = new ArrayList<>();
        for (HourWindow window : windows) {
            double start = Epoch.seconds(window.start());
            double end = Epoch.seconds(window.end());
            for (double t = start; t < end; t += step) {
                lights.add(new PackingList.Light(Epoch.instant(t), light.exposureValue100(t), t == start));
            }
            lights.add(new PackingList.Light(window.end(), light.exposureValue100(end), start == end));
        }
        return lights;
    }
}
