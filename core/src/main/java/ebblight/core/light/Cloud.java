package ebblight.core.light;

import ebblight.core.numeric.Powers;

/** Cover of the sky and by how much it divides the light (USNO Circular 171). */
public enum Cloud {
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

    /** One lower-case word. */
    public String word() {
        return word;
    }

    /** By how much the light under a clear sky is divided. */
    public double divisor() {
        return divisor;
    }

    /** How many stops it takes. */
    public double stops() {
        return Powers.log2(divisor);
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

    /** The cloud nearest to a cover between 0 (none) and 1 (all): clear up to ¼, thin to ½, average to ⅞, else dark. */
    public static Cloud ofCover(double fraction) {
        if (!(fraction >= 0 && fraction <= 1)) {
            throw new IllegalArgumentException("cloud cover lies between 0 and 1, was " + fraction);
        }
        return fraction <= 0.25 ? CLEAR : fraction <= 0.5 ? THIN : fraction <= 0.875 ? AVERAGE : DARK;
    }
}
