package ebblight.imaging.grain;

/**
 * Noise of a picture in linear light: variance of luminance = {@code slope} · luminance + {@code floor}.
 *
 * @param source how it is known, in words
 */
public record Grain(double slope, double floor, String source) {

    public Grain {
        if (!(slope >= 0 && floor >= 0)) {
            throw new IllegalArgumentException("slope and floor must be 0 or more, were " + slope + ", " + floor);
        }
    }

    /** Variance at a luminance. */
    public double variance(double luminance) {
        return slope * Math.max(0, luminance) + floor;
    }

    /** Noise of the mean of so many frames that have this noise. */
    public Grain ofMean(int frames) {
        return new Grain(slope / frames, floor / frames, source);
    }
}
