package ebblight.core.exposure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Requests for settings that can be worked by hand: at exposure value E (ISO 100), f/8 needs 2^(6 − E) seconds, each stop
 * of filter doubles the time, each stop of aperture or ISO halves or doubles it.
 */
final class Asked {

    private Asked() {}

    /** A steady light of a whole exposure value, one time or a range of times, filters as typed, one or two on the lens. */
    static SettingsRequest of(double exposureValue, double from, double to, String... bag) {
        return of(exposureValue, from, to, Camera.standard(), bag);
    }

    static SettingsRequest of(double exposureValue, double from, double to, Camera camera, String... bag) {
        return new SettingsRequest(
                meter(exposureValue),
                0,
                from,
                to,
                filters(bag),
                2,
                camera,
                ChangingLight.steady(),
                Reciprocity.none(),
                Optional.empty());
    }

    /** f/1 for 2^−v s at ISO 100 is EV v; f/4 where that would be too short. */
    static MeterReading meter(double exposureValue) {
        return new MeterReading(4, 16 * Math.pow(2, -exposureValue), 100);
    }

    static List<Filter> filters(String... typed) {
        return Stream.of(typed).map(Filter::parse).toList();
    }

    /** A camera from one f-number to another, from one ISO to another, with its base. */
    static Camera camera(double widest, double narrowest, double lowest, double highest, double base) {
        return new Camera(
                widest,
                narrowest,
                lowest,
                highest,
                base,
                32,
                Math.min(narrowest, Math.max(widest, ThirdStops.fNumber(15))),
                Math.max(widest, Math.min(narrowest, ThirdStops.fNumber(21))),
                false,
                36,
                24,
                24,
                true);
    }
}
