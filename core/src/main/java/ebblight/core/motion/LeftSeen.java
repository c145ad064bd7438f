package ebblight.core.motion;

/**
 * What is left of the texture of a part in one finished picture: its local contrast in the band that counts as standing,
 * 0.2 to 2 % of the width. A prediction of what is left, √((texture · ratio)² + standing²), can be held against it: on
 * the demo's true exposures of 2 to 80 s the two lie within a tenth of each other.
 */
public final class LeftSeen {

    private LeftSeen() {}

    /**
     * The local contrast as a share of the mean luminance of the part; 0 where it has none.
     *
     * @param luminance linear, row by row
     * @param width pixels; the width of the survey that predicted, or the band is another one
     * @param mask 1 inside the part, 0 outside
     */
    public static double of(float[] luminance, int width, int height, float[] mask) {
        if (luminance.length != width * height || mask.length != width * height) {
            throw new IllegalArgumentException("luminance and mask must have " + width + " × " + height + " values");
        }
        return Standing.between(width, height, luminance, luminance, mask);
    }
}
