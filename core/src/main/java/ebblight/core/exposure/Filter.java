package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import java.util.Locale;

/**
 * A filter in the bag and what it takes.
 *
 * @param name as typed
 * @param kind what it does
 * @param stops light it takes, in stops: measured where it was, else as engraved
 * @param rangeStops how far off that may be, either way
 * @param measured whether it was measured
 */
public record Filter(String name, Kind kind, double stops, double rangeStops, boolean measured) {

    private static final String EXPECTED = "stops (6), a factor (nd1000), a density (3.0d), pol, grad2 or vnd2-8";
    private static final double LOG10_OF_2 = StrictMath.log10(2);
    private static final double UNMEASURED = 1.0 / 3;
    private static final double UNMEASURED_DENSE = 2.0 / 3;
    private static final double DENSE_STOPS = 13;
    private static final double MEASURED = 0.05;
    private static final double POLARISER_STOPS = 1.5;
    private static final double MOST_STOPS = 30;

    /** What a filter does. */
    public enum Kind {
        /** Takes the same everywhere. */
        NEUTRAL,
        /** Takes light by its direction; meter through it. */
        POLARISER,
        /** Takes from one side of the picture only. */
        GRADUATED,
        /** Two polarisers that turn; meter through it, its marks are not to be trusted. */
        VARIABLE
    }

    public Filter {
        if (!(stops >= 0 && stops <= MOST_STOPS)) {
            throw new IllegalArgumentException("a filter takes 0 to 30 stops, " + name + " was given " + stops);
        }
    }

    /** A filter of {@code density}: stops = density / log10(2). */
    public static double stopsOfDensity(double density) {
        return density / LOG10_OF_2;
    }

    /** A filter of {@code factor}: stops = log2(factor). */
    public static double stopsOfFactor(double factor) {
        return Powers.log2(factor);
    }

    /** Optical density. */
    public double density() {
        return stops * LOG10_OF_2;
    }

    /** How many times longer to expose. */
    public double factor() {
        return Powers.exp2(stops);
    }

    /** Reads {@code 6}, {@code nd1000}, {@code 3.0d}, {@code pol}, {@code grad2} or {@code vnd5}. */
    public static Filter parse(String typed) {
        String text = typed.trim().toLowerCase(Locale.ROOT);
        if (text.equals("pol")) {
            return new Filter(typed.trim(), Kind.POLARISER, POLARISER_STOPS, 0.5, false);
        }
        if (text.startsWith("grad")) {
            return unmeasured(typed, Kind.GRADUATED, Numbers.parse(text.substring(4), typed, EXPECTED));
        }
        if (text.startsWith("vnd")) {
            String range = text.substring(3);
            int dash = range.indexOf('-');
            double stops = dash < 0
                    ? Numbers.parse(range, typed, EXPECTED)
                    : 0.5
                            * (Numbers.parse(range.substring(0, dash), typed, EXPECTED)
                                    + Numbers.parse(range.substring(dash + 1), typed, EXPECTED));
            checkRange(typed, stops);
            return new Filter(typed.trim(), Kind.VARIABLE, stops, 1, false);
        }
        if (text.startsWith("nd")) {
            double factor = Numbers.parse(text.substring(2), typed, EXPECTED);
            if (!(factor >= 1)) {
                throw new UnreadableTextException(typed, EXPECTED);
            }
            return unmeasured(typed, Kind.NEUTRAL, stopsOfFactor(factor));
        }
        if (text.endsWith("d")) {
            double density = Numbers.parse(text.substring(0, text.length() - 1), typed, EXPECTED);
            return unmeasured(typed, Kind.NEUTRAL, stopsOfDensity(density));
        }
        return unmeasured(typed, Kind.NEUTRAL, Numbers.parse(text, typed, EXPECTED));
    }

    private static Filter unmeasured(String typed, Kind kind, double stops) {
        checkRange(typed, stops);
        double range = stops >= DENSE_STOPS ? UNMEASURED_DENSE : UNMEASURED;
        return new Filter(typed.trim(), kind, stops, range, false);
    }

    private static void checkRange(String typed, double stops) {
        if (!(stops > 0 && stops <= MOST_STOPS)) {
            throw new UnreadableTextException(typed, EXPECTED + ", more than 0 and at most 30 stops");
        }
    }

    /** This filter with its measured density in stops. */
    public Filter withMeasured(double measuredStops) {
        return new Filter(name, kind, measuredStops, MEASURED, true);
    }
}
