package ebblight.core.sky;

/**
 * What a rectilinear lens looks at: where its axis points and how much of the world falls on the sensor. The camera is
 * level, not rolled.
 *
 * @param azimuthDegrees of the axis, from north through east
 * @param altitudeDegrees of the axis above the horizon, −89 to 89
 * @param focalMillimetres 1 to 2000
 * @param widthMillimetres of the sensor, across the picture
 * @param heightMillimetres of the sensor
 */
public record CameraView(
        double azimuthDegrees,
        double altitudeDegrees,
        double focalMillimetres,
        double widthMillimetres,
        double heightMillimetres) {

    public CameraView {
        if (!(azimuthDegrees >= -360 && azimuthDegrees <= 720)) {
            throw new IllegalArgumentException(
                    "the azimuth of a view lies between 0 and 360 degrees, was " + azimuthDegrees);
        }
        if (!(Math.abs(altitudeDegrees) <= 89)) {
            throw new IllegalArgumentException(
                    "the altitude of a view lies between -89 and 89 degrees, was " + altitudeDegrees);
        }
        if (!(focalMillimetres >= 1 && focalMillimetres <= 2000)) {
            throw new IllegalArgumentException("a focal length lies between 1 and 2000 mm, was " + focalMillimetres);
        }
        if (!(widthMillimetres >= 1 && widthMillimetres <= 500 && heightMillimetres >= 1 && heightMillimetres <= 500)) {
            throw new IllegalArgumentException(
                    "a sensor is 1 to 500 mm wide and high, was " + widthMillimetres + " × " + heightMillimetres);
        }
    }

    /**
     * Where a direction falls on the sensor.
     *
     * @param inFront whether it lies before the lens; if not, x and y mean nothing
     * @param xMillimetres right of the middle, seen as the picture
     * @param yMillimetres above the middle
     */
    public record Spot(boolean inFront, double xMillimetres, double yMillimetres) {}

    /** Where a direction falls, its altitude as it is seen. */
    public Spot spot(double azimuth, double altitude) {
        double turn = azimuth - azimuthDegrees;
        double level = Angles.cos(altitude) * Angles.cos(turn);
        double right = Angles.cos(altitude) * Angles.sin(turn);
        double up = Angles.sin(altitude);
        double forward = level * Angles.cos(altitudeDegrees) + up * Angles.sin(altitudeDegrees);
        double above = up * Angles.cos(altitudeDegrees) - level * Angles.sin(altitudeDegrees);
        return forward > 0
                ? new Spot(true, focalMillimetres * right / forward, focalMillimetres * above / forward)
                : new Spot(false, 0, 0);
    }

    /** Angle between the axis and a direction, 0 to 180 degrees. */
    public double offAxisDegrees(double azimuth, double altitude) {
        return new Horizontal(azimuth, altitude, 1)
                .separationDegrees(new Horizontal(azimuthDegrees, altitudeDegrees, 1));
    }

    /**
     * Angle in degrees from a direction to the nearest point of the picture's edge: positive outside of the picture,
     * negative inside.
     */
    public double outsideDegrees(double azimuth, double altitude) {
        double turn = azimuth - azimuthDegrees;
        double level = Angles.cos(altitude) * Angles.cos(turn);
        double up = Angles.sin(altitude);
        double right = Angles.cos(altitude) * Angles.sin(turn);
        double forward = level * Angles.cos(altitudeDegrees) + up * Angles.sin(altitudeDegrees);
        double above = up * Angles.cos(altitudeDegrees) - level * Angles.sin(altitudeDegrees);
        return FrameEdge.outsideDegrees(
                right, above, forward, widthMillimetres / 2, heightMillimetres / 2, focalMillimetres);
    }
}
