package ebblight.imaging.raw;

/**
 * What the sensor of a camera with Bayer filters gathered, before any demosaicing.
 *
 * @param colours channel of the pixels 0,0 · 1,0 · 0,1 · 1,1 (column, row): 0 red, 1 green, 2 blue
 * @param black value of no light for the same four pixels
 * @param white value of the most light
 * @param flip how it was held: 0 upright, 3 upside down, 5 and 6 on its left and right side
 * @param cameraGains gains of red, green, blue for the white balance; 0 where the camera noted none
 * @param daylightGains the same for daylight
 * @param toSrgb camera's colours to linear sRGB, row by row
 * @param camera maker and model
 * @param samples row by row
 */
public record RawMosaic(
        int width,
        int height,
        int[] colours,
        int[] black,
        int white,
        int flip,
        float[] cameraGains,
        float[] daylightGains,
        float[] toSrgb,
        String camera,
        short[] samples) {}
