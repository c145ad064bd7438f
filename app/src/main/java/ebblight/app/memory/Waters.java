package ebblight.app.memory;

import org.jspecify.annotations.Nullable;

/** Kinds of water and winds by which outcomes are told apart. */
final class Waters {

    static final String BREAKING = "breaking waves";
    static final String RUNNING = "running water";
    static final String SWELL = "swell";
    static final String WIND_WAVES = "wind waves";
    static final String UNTOLD = "water, no period told";
    static final String FOLIAGE = "foliage";

    /** From here on waves count as swell: those of a fresh breeze (8 m/s) are fully grown at 6 s (Pierson–Moskowitz). */
    static final double SWELL_SECONDS = 6;

    /** Lowest winds of Beaufort 2, 4 and 6 in m/s, and the words for what lies between (WMO). */
    private static final double[] FROM = {1.6, 5.5, 10.8};

    private static final String[] WINDS = {
        "calm to light air (under 1.6 m/s)", "light to gentle breeze (1.6 to 5.4 m/s)",
        "moderate to fresh breeze (5.5 to 10.7 m/s)", "strong wind (10.8 m/s and more)"
    };

    private Waters() {}

    /** The wind in words; where it is not known, that. */
    static String wind(@Nullable Object metresPerSecond) {
        if (!(metresPerSecond instanceof Number wind)) {
            return "wind not known";
        }
        int k = 0;
        while (k < FROM.length && wind.doubleValue() >= FROM[k]) {
            k++;
        }
        return WINDS[k];
    }
}
