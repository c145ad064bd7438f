package ebblight.core.outing;

/** Parts of the day by the sun's altitude without air, in degrees. */
public enum Twilight {
    /** Sun up. */
    DAY("day", Twilight.SUNRISE, 91),
    /** Sun down, at most 6° under. */
    CIVIL("civil", -6, Twilight.SUNRISE),
    /** Sun 6° to 12° under. */
    NAUTICAL("nautical", -12, -6),
    /** Sun 12° to 18° under. */
    ASTRONOMICAL("astronomical", -18, -12),
    /** Sun more than 18° under. */
    NIGHT("night", -91, -18);

    /** 34 minutes of air and 16 of half the disc. */
    private static final double SUNRISE = -50 / 60.0;

    private final String word;
    private final double low;
    private final double high;

    Twilight(String word, double low, double high) {
        this.word = word;
        this.low = low;
        this.high = high;
    }

    /** One lower-case word. */
    public String word() {
        return word;
    }

    /** How deep inside this part of the day the sun stands, in degrees; negative outside. */
    double margin(double altitudeDegrees) {
        return Math.min(altitudeDegrees - low, high - altitudeDegrees);
    }

    /** The part of the day of one word. */
    public static Twilight of(String word) {
        for (Twilight twilight : values()) {
            if (twilight.word.equals(word)) {
                return twilight;
            }
        }
        throw new IllegalArgumentException(
                "\"" + word + "\" is no part of the day; expected day, civil, nautical, astronomical or night");
    }
}
