package ebblight.core.sky;

/**
 * Where a body stands over a place.
 *
 * @param azimuthDegrees from north through east, 0 to 360
 * @param altitudeDegrees of its middle above the level horizon, without air
 * @param kilometres from the place
 */
public record Horizontal(double azimuthDegrees, double altitudeDegrees, double kilometres) {

    /** Altitude in degrees as it is seen through air of 1010 hPa and 10 °C. */
    public double apparentAltitudeDegrees() {
        return Refraction.apparentDegrees(altitudeDegrees);
    }

    /** Angle to another direction in degrees. */
    public double separationDegrees(Horizontal other) {
        double half = Angles.sin((other.altitudeDegrees - altitudeDegrees) / 2);
        double turn = Angles.sin((other.azimuthDegrees - azimuthDegrees) / 2);
        double square = half * half + Angles.cos(altitudeDegrees) * Angles.cos(other.altitudeDegrees) * turn * turn;
        return 2 * Angles.asin(Math.sqrt(square));
    }
}
