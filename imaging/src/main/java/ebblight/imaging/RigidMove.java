package ebblight.imaging;

import ebblight.core.motion.Placement;

/**
 * Where pixels of an upright frame are found in one that was shifted and turned: {@code x' = cos·x − sin·y + dx},
 * {@code y' = sin·x + cos·y + dy}, in pixels from the middle of the first one.
 */
record RigidMove(double cos, double sin, double dx, double dy) {

    /** The move of a placement that was found at survey width about the middle of the picture. */
    static RigidMove of(Placement placement, int surveyWidth, int width, int height) {
        double scale = (double) width / surveyWidth;
        double c = Math.cos(placement.angle());
        double s = Math.sin(placement.angle());
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        return new RigidMove(
                c, s, placement.dx() * scale + cx - c * cx + s * cy, placement.dy() * scale + cy - s * cx - c * cy);
    }

    double x(double x, double y) {
        return cos * x - sin * y + dx;
    }

    double y(double x, double y) {
        return sin * x + cos * y + dy;
    }
}
