package ebblight.core.exposure;

import java.util.List;
import java.util.Optional;

/**
 * What settings are asked for.
 *
 * @param meter reading without filters
 * @param biasStops how much brighter than the meter says, in stops
 * @param fromSeconds shortest shutter time wanted
 * @param toSeconds longest; equal to {@code fromSeconds} when one time is wanted
 * @param bag filters at hand, each usable once
 * @param maxStack most neutral filters on the lens at once
 * @param camera limits of camera and lens
 * @param light how the light changes
 * @param reciprocity of the film, none for a sensor
 * @param depth nearest and farthest distance that must be sharp
 */
public record SettingsRequest(
        MeterReading meter,
        double biasStops,
        double fromSeconds,
        double toSeconds,
        List<Filter> bag,
        int maxStack,
        Camera camera,
        ChangingLight light,
        Reciprocity reciprocity,
        Optional<Depth> depth) {

    /** Largest bias either way. */
    public static final double MOST_BIAS_STOPS = 10;

    /** Most neutral filters that can be asked for on one lens. */
    public static final int MOST_STACKED = 4;

    /** Most filters in a bag: every subset of them is tried. */
    public static final int MOST_FILTERS = 12;

    public SettingsRequest {
        bag = List.copyOf(bag);
        if (!(fromSeconds > 0 && fromSeconds <= toSeconds)) {
            throw new IllegalArgumentException(
                    "the shutter time must run from a shorter to a longer one above 0 s, was " + fromSeconds + " to "
                            + toSeconds);
        }
        if (!(Math.abs(biasStops) <= MOST_BIAS_STOPS)) {
            throw new IllegalArgumentException("the bias lies within 10 stops either way, was " + biasStops);
        }
        if (maxStack < 0 || maxStack > MOST_STACKED) {
            throw new IllegalArgumentException("0 to 4 filters can be stacked, was " + maxStack);
        }
        if (bag.size() > MOST_FILTERS) {
            throw new IllegalArgumentException("a bag holds at most 12 filters, had " + bag.size());
        }
    }

    /** Distances between which the picture must be sharp, in metres; {@code farthestMetres} may be infinite. */
    public record Depth(double nearestMetres, double farthestMetres) {
        public Depth {
            if (!(nearestMetres > 0 && nearestMetres <= farthestMetres)) {
                throw new IllegalArgumentException("nearest must be above 0 m and not beyond farthest, were "
                        + nearestMetres + " and " + farthestMetres);
            }
        }
    }

    /** The time aimed at: the middle of the range in stops. */
    public double aimSeconds() {
        return Math.sqrt(fromSeconds * toSeconds);
    }
}
