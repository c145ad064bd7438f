package ebblight.core.optics;

/** How wide a rectilinear lens sees. */
public final class FieldOfView {

    private FieldOfView() {}

    /** Angle in degrees across {@code sensorMillimetres}: 2 atan(d / 2f). */
    public static double degrees(double focalMillimetres, double sensorMillimetres) {
        return 2 * StrictMath.atan2(sensorMillimetres, 2 * focalMillimetres) * 180 / Math.PI;
    }

    /** Focal length on 36 × 24 mm that sees as wide along the diagonal. */
    public static double equivalentMillimetres(double focalMillimetres, double sensorWidth, double sensorHeight) {
        double diagonal = Math.sqrt(sensorWidth * sensorWidth + sensorHeight * sensorHeight);
        return focalMillimetres * Math.sqrt(36.0 * 36 + 24 * 24) / diagonal;
    }
}
