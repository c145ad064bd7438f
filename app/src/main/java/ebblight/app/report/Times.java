package ebblight.app.report;

import ebblight.app.ask.Words;
import java.util.Locale;

/** Shutter times and stops as the page writes them. */
final class Times {

    private Times() {}

    /** A time with its unit, short enough for the band: "10 s", "1:27 min". */
    static String brief(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 60) {
            return Words.say(seconds);
        }
        return whole % 60 == 0
                ? whole / 60 + " min"
                : String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60);
    }

    /** Stops to the nearest third: "4⅓". */
    static String thirds(double stops) {
        long thirds = Math.round(3 * Math.abs(stops));
        String part = new String[] {"", "⅓", "⅔"}[(int) (thirds % 3)];
        return thirds < 3 && !part.isEmpty() ? part : thirds / 3 + part;
    }
}
