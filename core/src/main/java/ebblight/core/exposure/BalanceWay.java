package ebblight.core.exposure;

import java.util.ArrayList;
import java.util.List;

/**
 * A way to even sky and foreground.
 *
 * @param kind graduated, two exposures or one exposure
 * @param stops what the filter takes, or how far the exposures lie apart
 * @param leftStops what remains between sky and foreground
 * @param words for a person
 */
public record BalanceWay(Kind kind, double stops, double leftStops, String words) {

    /** How it is evened. */
    public enum Kind {
        GRADUATED("graduated"),
        TWO_EXPOSURES("two exposures"),
        ONE_EXPOSURE("one exposure");

        private final String text;

        Kind(String text) {
            this.text = text;
        }

        public String text() {
            return text;
        }
    }

    /** Common practice: a sky up to a stop brighter than its foreground looks natural. */
    private static final double NATURAL = 1;

    /** Common practice: graduated filters are made in whole stops, mostly these. */
    private static final List<Double> USUAL = List.of(1.0, 2.0, 3.0);

    /** Common practice: a hard edge suits a transition narrower than this share of the height. */
    private static final double HARD = 0.08;

    /**
     * The ways out of a balance, best first.
     *
     * @param owned stops of the graduated filters in the bag; with none the usual ones are weighed
     */
    public static List<BalanceWay> waysOut(Balance balance, List<Double> owned) {
        List<Double> graduated = owned.isEmpty() ? USUAL : owned;
        List<BalanceWay> ways = new ArrayList<>();
        double size = Math.abs(balance.stops());
        if (size <= NATURAL) {
            ways.add(new BalanceWay(
                    Kind.ONE_EXPOSURE,
                    0,
                    balance.stops(),
                    "one exposure: a difference of " + Numbers.stops(size) + " looks natural as it is"));
        }
        String edge = balance.softness() < HARD ? "hard" : "soft";
        String turned = balance.stops() < 0 ? ", turned upside down because the foreground is brighter" : "";
        for (double stops : graduated) {
            double left = size - stops;
            if (left > -0.5 && size > NATURAL) {
                ways.add(new BalanceWay(
                        Kind.GRADUATED,
                        stops,
                        balance.stops() < 0 ? -left : left,
                        "graduated filter of " + Numbers.stops(stops) + ", " + edge + " edge" + turned + ": leaves "
                                + Numbers.stops(Math.abs(left))));
            }
        }
        ways.sort((a, b) -> Double.compare(
                Math.abs(Math.abs(a.leftStops) - NATURAL / 2), Math.abs(Math.abs(b.leftStops) - NATURAL / 2)));
        if (size > NATURAL) {
            ways.add(new BalanceWay(
                    Kind.TWO_EXPOSURES,
                    size,
                    0,
                    "two exposures " + Numbers.stops(size)
                            + " apart, one for the sky and one for the foreground, blended along the transition"));
        }
        return ways;
    }
}
