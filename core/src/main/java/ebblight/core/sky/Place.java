package ebblight.core.sky;

import ebblight.core.numeric.Pieces;
import java.util.List;

/**
 * A place on the earth (WGS 84).
 *
 * @param latitudeDegrees −90 to 90, positive north
 * @param longitudeDegrees −180 to 180, positive east
 * @param elevationMetres above the sea
 */
public record Place(double latitudeDegrees, double longitudeDegrees, double elevationMetres) {

    private static final double EARTH_MEAN_RADIUS_KILOMETRES = 6371.0088;

    public Place {
        check("latitude", latitudeDegrees, 90);
        check("longitude", longitudeDegrees, 180);
        if (!(elevationMetres >= -500 && elevationMetres <= 9000)) {
            throw new IllegalArgumentException(
                    "the elevation of a place lies between -500 and 9000 m, was " + elevationMetres);
        }
    }

    private static void check(String name, double value, double limit) {
        if (!(Math.abs(value) <= limit)) {
            throw new IllegalArgumentException("the " + name + " of a place lies between -" + (int) limit + " and "
                    + (int) limit + " degrees, was " + value);
        }
    }

    /** A place at sea level. */
    public static Place of(double latitudeDegrees, double longitudeDegrees) {
        return new Place(latitudeDegrees, longitudeDegrees, 0);
    }

    /** Reads {@code 63.40,-19.05}: latitude, then longitude, in degrees. */
    public static Place parse(String typed) {
        List<String> parts = Pieces.of(typed, ",; \t\n");
        if (parts.size() == 2) {
            try {
                return of(Double.parseDouble(parts.get(0)), Double.parseDouble(parts.get(1)));
            } catch (NumberFormatException e) {
                // told below, with what was expected
            }
        }
        throw new IllegalArgumentException(
                "\"" + typed + "\" is no place; expected latitude,longitude in degrees such as 63.40,-19.05");
    }

    /** Distance along the earth's surface, on a sphere, in kilometres. */
    public double kilometresTo(Place other) {
        double halfLatitude = Angles.sin((other.latitudeDegrees - latitudeDegrees) / 2);
        double halfLongitude = Angles.sin((other.longitudeDegrees - longitudeDegrees) / 2);
        double square = halfLatitude * halfLatitude
                + Angles.cos(latitudeDegrees) * Angles.cos(other.latitudeDegrees) * halfLongitude * halfLongitude;
        return 2 * EARTH_MEAN_RADIUS_KILOMETRES * StrictMath.asin(Math.min(1, Math.sqrt(square)));
    }
}
