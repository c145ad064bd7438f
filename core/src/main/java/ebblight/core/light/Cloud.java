package ebblight.core.light;

import ebblight.core.numeric.Powers;

/** Cover of the sky and by how much it divides the light (USNO Circular 171). */
public enum Cloud implements CloudCover {
    /** Blue sky, at most a few clouds off the sun. */
    CLEAR("clear", 1),
    /** The sun shines through. */
    THIN("thin", 2),
    /** Average cloud. */
    AVERAGE("average", 3),
    /** Low dark stratus, rain. */
    DARK("dark", 10);

    private final String word;
    private final double divisor;

    Cloud(String word, double divisor) {
        this.word = word;
        this.divisor = divisor;
    }

    @Override
    public String word() {
        return word;
    }

    /** By how much the light under a clear sky is divided. */
    public double divisor() {
        return divisor;
    }

    /** How many stops it takes, at any instant. */
    @Override
    public double stops(double epochSeconds) {
        return Powers.log2(divisor);
    }

    @Override
    public double fastestStopsPerMinute() {
        return 0;
    }

    /** The cloud of one word: clear, thin, average or dark. */
    public static Cloud of(String word) {
        for (Cloud cloud : values()) {
            if (cloud.word.equals(word)) {
                return cloud;
            }
        }
        throw new IllegalArgumentException("\"" + word + "\" is no cloud cover; expected clear, thin, average or dark");
    }
}
