package ebblight.core.motion;

/**
 * Where a frame's picture lies against the middle frame's: turned by {@code angle} about the centre and shifted.
 *
 * @param dx to the right, in survey pixels
 * @param dy down, in survey pixels
 * @param angle in radians, clockwise on the screen
 */
public record Placement(double dx, double dy, double angle) {

    static final Placement HERE = new Placement(0, 0, 0);

    /** Movement at the left or right edge of a picture, in pixels. */
    double atEdge(int width) {
        return Math.sqrt(dx * dx + dy * dy) + Math.abs(angle) * width / 2;
    }
}
