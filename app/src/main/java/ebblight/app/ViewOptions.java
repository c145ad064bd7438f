package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the lens looks. */
final class ViewOptions {

    @Option(
            names = "--view-azimuth",
            paramLabel = "DEG",
            description = "Where the lens looks, in degrees from north through east.")
    private @Nullable Double azimuth;

    @Option(names = "--tilt", paramLabel = "DEG", description = "How far up it looks (default: 0).")
    private double tilt;

    @Option(names = "--focal", paramLabel = "MM", description = "Focal length (default: 24).")
    private double focal = 24;

    @Option(
            names = "--sensor",
            split = "x",
            paramLabel = "W×H",
            description = "Sensor in millimetres, width x height, as the camera is held (default: 36x24).")
    private double[] sensor = {36, 24};

    /** Puts the view into a request when it is given. */
    void put(JsonObject request) {
        if (azimuth == null) {
            return;
        }
        if (sensor.length != 2) {
            throw new UsageException("--sensor: expected width x height such as 36x24");
        }
        JsonObject view = new JsonObject();
        view.put("azimuth", azimuth);
        view.put("altitude", tilt);
        view.put("focalMillimetres", focal);
        JsonArray size = new JsonArray();
        size.add(sensor[0]);
        size.add(sensor[1]);
        view.put("sensorMillimetres", size);
        request.put("view", view);
    }
}
