package ebblight.core.sky;

/**
 * The moon as the earth's middle sees it. Source: Meeus, Astronomical Algorithms, chapter 47, who states 10 seconds of
 * arc in longitude and 4 in latitude.
 */
final class MoonTheory {

    private static final double SCALE = 1e-6;

    private MoonTheory() {}

    /** Geocentric apparent moon at {@code t} Julian centuries of terrestrial time since 2000. */
    static Geocentric at(double t, Nutation nutation) {
        double mean = 218.3164477 + t * (481_267.88123421 + t * (-0.0015786 + t * (1 / 538_841.0 - t / 65_194_000)));
        double elongation =
                297.8501921 + t * (445_267.1114034 + t * (-0.0018819 + t * (1 / 545_868.0 - t / 113_065_000)));
        double sun = 357.5291092 + t * (35_999.0502909 + t * (-0.0001536 + t / 24_490_000));
        double moon = 134.9633964 + t * (477_198.8675055 + t * (0.0087414 + t * (1 / 69_699.0 - t / 14_712_000)));
        double node = 93.2720950 + t * (483_202.0175233 + t * (-0.0036539 + t * (-1 / 3_526_000.0 + t / 863_310_000)));
        double[] arguments = {elongation, sun, moon, node};
        double eccentricity = 1 + t * (-0.002516 - 0.0000074 * t);
        double venus = 119.75 + 131.849 * t;
        double jupiter = 53.09 + 479_264.290 * t;
        double third = 313.45 + 481_266.484 * t;

        double longitude = 3958 * Angles.sin(venus) + 1962 * Angles.sin(mean - node) + 318 * Angles.sin(jupiter);
        double distance = 0;
        double[] rows = MoonTerms.LONGITUDE_AND_DISTANCE;
        for (int i = 0; i < rows.length; i += 6) {
            double argument = argument(rows, i, arguments);
            double shrink = shrink(rows[i + 1], eccentricity);
            longitude += rows[i + 4] * shrink * StrictMath.sin(argument);
            distance += rows[i + 5] * shrink * StrictMath.cos(argument);
        }
        double latitude = -2235 * Angles.sin(mean)
                + 382 * Angles.sin(third)
                + 175 * Angles.sin(venus - node)
                + 175 * Angles.sin(venus + node)
                + 127 * Angles.sin(mean - moon)
                - 115 * Angles.sin(mean + moon);
        rows = MoonTerms.LATITUDE;
        for (int i = 0; i < rows.length; i += 5) {
            latitude += rows[i + 4] * shrink(rows[i + 1], eccentricity) * StrictMath.sin(argument(rows, i, arguments));
        }
        return Geocentric.ofEcliptic(
                mean + SCALE * longitude + nutation.longitudeDegrees(),
                SCALE * latitude,
                nutation.obliquityDegrees(),
                385_000.56 + distance / 1000);
    }

    private static double argument(double[] rows, int i, double[] arguments) {
        return Angles.RADIAN
                * (rows[i] * arguments[0]
                        + rows[i + 1] * arguments[1]
                        + rows[i + 2] * arguments[2]
                        + rows[i + 3] * arguments[3]);
    }

    /** Terms that hold the sun's anomaly shrink with the eccentricity of the earth's path. */
    private static double shrink(double timesSun, double eccentricity) {
        double times = Math.abs(timesSun);
        return times == 0 ? 1 : times == 1 ? eccentricity : eccentricity * eccentricity;
    }
}
