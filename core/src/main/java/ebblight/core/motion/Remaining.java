package ebblight.core.motion;

/**
 * What is left of a region's texture at one exposure time, against a single frame of the clip.
 *
 * @param seconds exposure time
 * @param ratio R(T) = C(T)/C(0), 0 to 1: the most likely value
 * @param low lower end of the likely range, 0 to {@code ratio}
 * @param high upper end of the likely range, {@code ratio} to 1
 * @param basis what the value rests on
 */
public record Remaining(double seconds, double ratio, double low, double high, Basis basis) {

    /** What a value rests on. */
    public enum Basis {
        /** Seen: the clip holds many stretches as long as the exposure. */
        MEASURED,
        /** Carried on beyond the clip by the law that the variance of a mean falls as 1/T. */
        EXTRAPOLATED,
        /** Too far beyond what the clip shows to be told to anybody; the numbers serve a drawing only. */
        TOO_FAR
    }

    public Remaining {
        if (!(seconds >= 0) || !(low >= 0) || !(low <= ratio) || !(ratio <= high) || !(high <= 1)) {
            throw new IllegalArgumentException("need 0 ≤ low ≤ ratio ≤ high ≤ 1 and seconds ≥ 0, had " + low + ", "
                    + ratio + ", " + high + " at " + seconds + " s");
        }
    }
}
