package ebblight.core.sky;

/** Angles between a direction and the edge of a picture, on the sphere around the lens. */
final class FrameEdge {

    private FrameEdge() {}

    /**
     * Signed angle from a unit vector to the edge in degrees, positive outside.
     *
     * @param x right, y above, z forward: the unit vector
     * @param halfWidth of the sensor; {@code halfHeight}, {@code focal} in the same unit
     */
    static double outsideDegrees(double x, double y, double z, double halfWidth, double halfHeight, double focal) {
        double norm = 1 / Math.sqrt(halfWidth * halfWidth + halfHeight * halfHeight + focal * focal);
        double cornerX = halfWidth * norm;
        double cornerY = halfHeight * norm;
        double cornerZ = focal * norm;
        // the four edges are alike: fold the vector into one quarter of the picture
        double right = Math.abs(x);
        double above = Math.abs(y);
        double overSide = (right * focal - z * halfWidth) / Math.sqrt(halfWidth * halfWidth + focal * focal);
        double overTop = (above * focal - z * halfHeight) / Math.sqrt(halfHeight * halfHeight + focal * focal);
        if (overSide <= 0 && overTop <= 0) {
            return Angles.asin(Math.max(overSide, overTop));
        }
        double toCorner = angle(right - cornerX, above - cornerY, z - cornerZ);
        double nearest = toCorner;
        if (overSide > 0 && nearSide(right, above, z, halfWidth, halfHeight, focal)) {
            nearest = Math.min(nearest, Angles.asin(overSide));
        }
        if (overTop > 0 && nearSide(above, right, z, halfHeight, halfWidth, focal)) {
            nearest = Math.min(nearest, Angles.asin(overTop));
        }
        return nearest;
    }

    /** Whether the foot of the vector on the great circle of the edge lies between the edge's ends. */
    private static boolean nearSide(double out, double along, double z, double half, double halfAlong, double focal) {
        double onAxis = (out * half + z * focal) / Math.sqrt(half * half + focal * focal);
        return onAxis > 0 && along / onAxis <= halfAlong / Math.sqrt(half * half + focal * focal);
    }

    /** Angle between two unit vectors from their difference. */
    private static double angle(double dx, double dy, double dz) {
        return 2 * Angles.asin(0.5 * Math.sqrt(dx * dx + dy * dy + dz * dz));
    }
}
