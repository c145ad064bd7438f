package ebblight.core.wish;

import java.util.List;

/**
 * Wishes that no shutter time fulfils together.
 *
 * @param first the demand for the shorter time, or the one that cannot be met at all
 * @param second the demand for the longer time; the same as {@code first} when that one cannot be met at all
 * @param stops how far they lie apart; infinite when one cannot be met at all
 * @param shorterSeconds longest time that meets the first; 0 when none does
 * @param longerSeconds shortest time that meets the second
 * @param ways ways out
 */
public record Clash(
        Demand first, Demand second, double stops, double shorterSeconds, double longerSeconds, List<Way> ways) {

    public Clash {
        ways = List.copyOf(ways);
    }

    /**
     * A way out.
     *
     * @param kind between, blend or burst; relax, nearest or measure where one wish cannot be met at all
     * @param seconds shutter times it takes, in order
     * @param frames number of frames it takes
     * @param words for a person
     */
    public record Way(String kind, List<Double> seconds, int frames, String words) {}
}
