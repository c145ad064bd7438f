package ebblight.demo;

/**
 * Where the camera looks: level, so that the horizon is straight and posts stand upright, with the frame shifted as by
 * a shift lens; lengths in widths of the picture, so that every size shows the same scene.
 *
 * @param width of the picture in pixels
 * @param focalWidths focal length over the sensor's width
 * @param centreRight tangent to the right of the axis at the middle of the picture
 * @param horizonWidths height of the horizon below the upper edge
 */
record Lens(int width, double focalWidths, double centreRight, double horizonWidths) {

    /** Height of the lens over still water. */
    static final double HEIGHT_METRES = 2.0;

    Lens {
        if (width < 48 || width > 4096) {
            throw new IllegalArgumentException("width must be 48 to 4096 pixels, was " + width);
        }
        if (!(focalWidths > 0.5 && focalWidths < 3) || !(horizonWidths > 0.05 && horizonWidths < 0.6)) {
            throw new IllegalArgumentException(
                    "no such frame: focal length " + focalWidths + " widths, horizon at " + horizonWidths);
        }
    }

    /** The whole cove: 28 mm on a 36 mm wide sensor. */
    static Lens cove(int width) {
        return new Lens(width, 28.0 / 36, 0, 0.4 * 2 / 3);
    }

    /** The arch alone: 60 mm, shifted to the left. */
    static Lens arch(int width) {
        return new Lens(width, 60.0 / 36, -0.385, 0.62 * 2 / 3);
    }

    /** The posts: 50 mm, shifted to the right. */
    static Lens posts(int width) {
        return new Lens(width, 50.0 / 36, 0.22, 0.5 * 2 / 3);
    }

    /** The offing: 86 mm, past the arch's foot, where little stands in the sea. */
    static Lens offing(int width) {
        return new Lens(width, 86.0 / 36, -0.13, 0.4 * 2 / 3);
    }

    int height() {
        return (int) Math.floor(width * 2.0 / 3);
    }

    double focalPixels() {
        return focalWidths * width;
    }

    /** Height of the horizon below the upper edge in pixels, not a whole number in general. */
    double horizonPixels() {
        return horizonWidths * width;
    }

    /** Tangent to the right of the axis of a place {@code x} pixels from the left edge. */
    double right(double x) {
        return (x - width / 2.0) / focalPixels() + centreRight;
    }

    /** Tangent above the horizon of a place {@code y} pixels below the upper edge. */
    double up(double y) {
        return (horizonPixels() - y) / focalPixels();
    }

    /** Pixels from the left edge of a tangent to the right. */
    double x(double right) {
        return width / 2.0 + (right - centreRight) * focalPixels();
    }

    /** Pixels below the upper edge of a tangent above the horizon. */
    double y(double up) {
        return horizonPixels() - up * focalPixels();
    }
}
