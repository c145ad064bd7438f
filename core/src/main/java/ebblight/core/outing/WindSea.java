package ebblight.core.outing;

/**
 * Waves that the wind itself has raised, fully grown, after Pierson and Moskowitz as given by Stewart, Introduction to
 * Physical Oceanography, eqs 16.29 to 16.33. Waves of lakes, of bays and of young winds are shorter.
 *
 * @param windMetresPerSecond 10 m over the water, 0.5 to 40
 */
public record WindSea(double windMetresPerSecond) {

    private static final double GRAVITY = 9.81;
    private static final double AT_19_5_METRES = 1.026;

    public WindSea {
        if (!(windMetresPerSecond >= 0.5 && windMetresPerSecond <= 40)) {
            throw new IllegalArgumentException(
                    "wind that raises waves blows at 0.5 to 40 m/s, was " + windMetresPerSecond);
        }
    }

    private double higherWind() {
        return AT_19_5_METRES * windMetresPerSecond;
    }

    /** Period of the highest waves in seconds: 2π U / 0.877 g, U at 19.5 m. */
    public double periodSeconds() {
        return 2 * Math.PI * higherWind() / (0.877 * GRAVITY);
    }

    /** Significant height in metres: 0.21 U² / g. */
    public double heightMetres() {
        return 0.21 * higherWind() * higherWind() / GRAVITY;
    }
}
