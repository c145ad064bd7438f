package ebblight.core.exposure;

import java.util.ArrayList;
import java.util.List;

/**
 * The time that a set of filters gives at base sensitivity and one aperture: what the bag reaches in this light.
 *
 * @param filters on the lens, densest first
 * @param fNumber exact
 * @param seconds for the light as metered
 */
public record Reach(List<Filter> filters, double fNumber, double seconds) {

    public Reach {
        filters = List.copyOf(filters);
    }

    /** Every stack of the bag at the whole-stop apertures at which the lens is sharpest, and one stop beyond. */
    static List<Reach> of(SettingsRequest request, double exposureValue, List<List<Filter>> stacks) {
        Camera camera = request.camera();
        List<Reach> all = new ArrayList<>();
        for (List<Filter> stack : stacks) {
            double stops = 0;
            for (Filter filter : stack) {
                stops += filter.stops();
            }
            for (int f = 0; f <= 36; f += 3) {
                double fNumber = ThirdStops.fNumber(f);
                boolean usable = fNumber >= Math.max(camera.widestFNumber(), camera.sharpestFrom()) * 0.99
                        && fNumber <= Math.min(camera.narrowestFNumber(), 1.45 * camera.sharpestTo());
                if (usable) {
                    all.add(new Reach(
                            stack,
                            fNumber,
                            SettingsSolver.neededSeconds(exposureValue, stops, fNumber, camera.baseIso())));
                }
            }
        }
        return all;
    }
}
