package ebblight.core.exposure;

import ebblight.core.optics.DepthOfField;
import java.util.List;
import java.util.Optional;

/**
 * One way to reach a shutter time.
 *
 * @param filters on the lens, densest first
 * @param stops light they take together
 * @param fNumber exact aperture
 * @param iso exact sensitivity
 * @param seconds open time for the light as metered
 * @param correctedSeconds open time with changing light and reciprocity
 * @param dial what to set, as the camera labels it
 * @param timed whether the camera counts the time itself
 * @param busySeconds until the camera is ready again
 * @param depth depth of field when distances were asked for
 * @param costs what it costs, the dearest first
 * @param errorStops gathered against wanted light in stops, by the forward calculation
 * @param errorRangeStops how far the unmeasured filters may shift it, either way
 */
public record Choice(
        List<Filter> filters,
        double stops,
        double fNumber,
        double iso,
        double seconds,
        double correctedSeconds,
        String dial,
        boolean timed,
        double busySeconds,
        Optional<DepthOfField> depth,
        List<Cost> costs,
        double errorStops,
        double errorRangeStops) {

    /**
     * Something a choice costs.
     *
     * @param stops weight in the ranking, 0 or more
     * @param words for a person
     */
    public record Cost(double stops, String words) {}

    public Choice {
        filters = List.copyOf(filters);
        costs = List.copyOf(costs);
    }

    /** Sum of all costs: the lower, the earlier in the ranking. */
    public double totalCost() {
        double sum = 0;
        for (Cost cost : costs) {
            sum += cost.stops();
        }
        return sum;
    }
}
