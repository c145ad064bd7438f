package ebblight.core.outing;

import ebblight.core.sky.CameraView;

/**
 * A layer of cloud over a flat earth; wrong below about 5° above the horizon.
 *
 * @param baseMetres of the layer above the place, 50 to 20 000
 * @param windMetresPerSecond at that height, 0 to 100
 */
public record CloudLayer(double baseMetres, double windMetresPerSecond) {

    /** Usual layers with winds that are usual at their height (étages of the Cloud Atlas; winds common practice). */
    public enum Usual {
        LOW("low", 1000, 10),
        MIDDLE("middle", 4000, 17),
        HIGH("high", 9000, 35);

        private final String word;
        private final double baseMetres;
        private final double windMetresPerSecond;

        Usual(String word, double baseMetres, double windMetresPerSecond) {
            this.word = word;
            this.baseMetres = baseMetres;
            this.windMetresPerSecond = windMetresPerSecond;
        }

        /** The layer of one word. */
        public static CloudLayer of(String word) {
            for (Usual usual : values()) {
                if (usual.word.equals(word)) {
                    return new CloudLayer(usual.baseMetres, usual.windMetresPerSecond);
                }
            }
            throw new IllegalArgumentException("\"" + word + "\" is no layer; expected low, middle or high");
        }
    }

    private static final double LOWEST_DEGREES = 5;

    public CloudLayer {
        if (!(baseMetres >= 50 && baseMetres <= 20_000)) {
            throw new IllegalArgumentException("a cloud's base lies 50 to 20000 m high, was " + baseMetres);
        }
        if (!(windMetresPerSecond >= 0 && windMetresPerSecond <= 100)) {
            throw new IllegalArgumentException("wind blows at 0 to 100 m/s, was " + windMetresPerSecond);
        }
    }

    /** Degrees a minute of a cloud at an elevation that goes across the line of sight: w sin e / b. */
    public double acrossDegreesPerMinute(double elevationDegrees) {
        return degreesPerMinute(sine(elevationDegrees));
    }

    /** Degrees a minute of one that comes or goes along it: w sin² e / b. */
    public double alongDegreesPerMinute(double elevationDegrees) {
        return degreesPerMinute(sine(elevationDegrees) * sine(elevationDegrees));
    }

    private double degreesPerMinute(double sines) {
        return 60 * 180 / Math.PI * windMetresPerSecond * sines / baseMetres;
    }

    private static double sine(double degrees) {
        return StrictMath.sin(degrees * Math.PI / 180);
    }

    /** Millimetres a second on the sensor, near the middle of the picture, of so many degrees a minute. */
    static double millimetresPerSecond(double degreesPerMinute, CameraView view) {
        return degreesPerMinute / 60 * Math.PI / 180 * view.focalMillimetres();
    }

    /** Elevation of the middle of the sky in a view, never under 5°. */
    static double elevationDegrees(CameraView view) {
        double quarter = StrictMath.atan2(view.heightMillimetres() / 4, view.focalMillimetres()) * 180 / Math.PI;
        return Math.max(LOWEST_DEGREES, view.altitudeDegrees() + quarter);
    }
}
