package ebblight.demo;

import ebblight.core.numeric.Powers;
import java.util.List;

/**
 * A neutral-density filter of the demo's bag: what is engraved on it and what it truly does.
 *
 * @param nominalStops stops as engraved
 * @param trueStops stops that it takes in green
 * @param red share of red that passes relative to green
 * @param blue share of blue that passes relative to green
 */
public record Filter(double nominalStops, double trueStops, double red, double blue) {

    /** The bag: a true filter of 3 stops, one of 6 that is a little denser and warm, one of 10 that is cold. */
    public static final Filter THREE = new Filter(3, 3.02, 1, 1);

    public static final Filter SIX = new Filter(6, 6.24, 1.09, 0.93);
    public static final Filter TEN = new Filter(10, 9.71, 0.90, 1.12);

    /** All filters of the bag. */
    public static final List<Filter> BAG = List.of(THREE, SIX, TEN);

    public Filter {
        if (!(nominalStops > 0 && nominalStops <= 20 && trueStops > 0 && trueStops <= 20 && red > 0 && blue > 0)) {
            throw new IllegalArgumentException("no such filter: " + nominalStops + " stops, truly " + trueStops
                    + ", red " + red + ", blue " + blue);
        }
    }

    /** Share of the light that passes in channel 0 red, 1 green, 2 blue. */
    double passes(int channel) {
        double cast = channel == 0 ? red : channel == 2 ? blue : 1;
        return cast * Powers.exp2(-trueStops);
    }
}
