package ebblight.core.card;

/**
 * What was measured of a frame beside the others of its view; what is not known is not a number.
 *
 * @param fixedSharpness detail of the still parts, 0 to 1 = the best of the view
 * @param softness how what is lost is spread
 * @param softShare share of the picture, where something stands, that is soft
 * @param smoothness of the flowing parts: 1 less what is left of their texture
 * @param clippedFraction share of the pixels at their end
 * @param levelStops how bright it came out against the middle of the view
 * @param veilStops by how much stray light lifts the shadows against the clearest of the view
 * @param tiltDegrees of the horizon, positive when its right end is lower
 * @param hotPixels pixels that fill by themselves
 * @param hotSure whether other frames tell that they are hot, not stars or spray
 */
public record Measured(
        double fixedSharpness,
        Softness softness,
        double softShare,
        double smoothness,
        double clippedFraction,
        double levelStops,
        double veilStops,
        double tiltDegrees,
        int hotPixels,
        boolean hotSure) {

    /** How the softness of the still parts is spread. */
    public enum Softness {
        /** As sharp as the best, as far as can be told. */
        NONE,
        /** Soft nearly everywhere, one way: the camera moved. */
        SHAKEN,
        /** Soft nearly everywhere, all ways: focus, or the camera moved round. */
        EVERYWHERE,
        /** Soft in some parts only: they moved, not the camera. */
        PARTS
    }
}
