package ebblight.engine;

import ebblight.core.sky.CameraView;
import ebblight.core.sky.Place;
import java.util.Optional;

/** Reads places and views. */
final class PlaceFields {

    private static final double SENSOR_WIDTH = 36;
    private static final double SENSOR_HEIGHT = 24;

    private PlaceFields() {}

    /** The place in {@code at}, with {@code elevationMetres} when it is given. */
    static Place place(Fields fields) {
        Place level = Checked.of(fields.path("at"), () -> Place.parse(fields.text("at")));
        double elevation = fields.number("elevationMetres", 0);
        return Checked.of(
                fields.path("elevationMetres"),
                () -> new Place(level.latitudeDegrees(), level.longitudeDegrees(), elevation));
    }

    /** The view in {@code view}; a sensor of 36 × 24 mm when none is given. */
    static Optional<CameraView> view(Fields fields) {
        if (!fields.has("view")) {
            return Optional.empty();
        }
        Fields view = fields.part("view");
        double[] sensor = view.has("sensorMillimetres")
                ? view.numbers("sensorMillimetres")
                : new double[] {SENSOR_WIDTH, SENSOR_HEIGHT};
        if (sensor.length != 2) {
            throw new RequestException(view.path("sensorMillimetres"), "must be width and height, such as [36, 24]");
        }
        return Optional.of(Checked.of(
                fields.path("view"),
                () -> new CameraView(
                        view.number("azimuth"),
                        view.number("altitude", 0),
                        view.number("focalMillimetres"),
                        sensor[0],
                        sensor[1])));
    }
}
