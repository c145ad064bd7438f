package ebblight.core.optics;

/**
 * From where to where a picture is sharp. Thin-lens formulas with hyperfocal distance H = f²/(N·c) + f, near limit
 * s(H − f)/(H + s − 2f), far limit s(H − f)/(H − s) (REFERENCES: optics).
 *
 * @param focusMetres distance the lens is focused at
 * @param nearMetres where sharpness begins
 * @param farMetres where it ends; infinite from the hyperfocal distance on
 */
public record DepthOfField(double focusMetres, double nearMetres, double farMetres) {

    /** Hyperfocal distance in metres. */
    public static double hyperfocalMetres(double focalMillimetres, double fNumber, double circleMillimetres) {
        return (focalMillimetres * focalMillimetres / (fNumber * circleMillimetres) + focalMillimetres) / 1000;
    }

    /** The depth of field of a lens focused at {@code focusMetres}. */
    public static DepthOfField at(
            double focusMetres, double focalMillimetres, double fNumber, double circleMillimetres) {
        double f = focalMillimetres / 1000;
        double h = hyperfocalMetres(focalMillimetres, fNumber, circleMillimetres);
        double near = focusMetres * (h - f) / (h + focusMetres - 2 * f);
        double far = focusMetres >= h ? Double.POSITIVE_INFINITY : focusMetres * (h - f) / (h - focusMetres);
        return new DepthOfField(focusMetres, near, far);
    }

    /** Where to focus so that both limits are equally sharp: the harmonic mean of the two. */
    public static double focusBetween(double nearestMetres, double farthestMetres) {
        return Double.isInfinite(farthestMetres)
                ? 2 * nearestMetres
                : 2 * nearestMetres * farthestMetres / (nearestMetres + farthestMetres);
    }

    /** Circle of confusion that the eye accepts: the sensor's diagonal over 1500, in millimetres. */
    public static double circleMillimetres(double sensorWidthMillimetres, double sensorHeightMillimetres) {
        return Math.sqrt(sensorWidthMillimetres * sensorWidthMillimetres
                        + sensorHeightMillimetres * sensorHeightMillimetres)
                / 1500;
    }
}
