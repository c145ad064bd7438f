package ebblight.imaging.finish;

/** Colour laid into shadows and lights: hue and chroma in L*a*b*. Black and white stay as they are. */
public record Toning(double shadowHue, double shadowChroma, double lightHue, double lightChroma) {

    private static final double MOST = 40;
    /** Brings u(1−u)² to 1 at its highest, a third of the way up. */
    private static final double PEAK = 6.75;

    public static final Toning NONE = new Toning(0, 0, 0, 0);

    public Toning {
        if (!(shadowChroma >= 0 && shadowChroma <= MOST && lightChroma >= 0 && lightChroma <= MOST)) {
            throw new IllegalArgumentException(
                    "chroma must lie between 0 and 40, was " + shadowChroma + " and " + lightChroma);
        }
        if (!(shadowHue >= 0 && shadowHue < 360 && lightHue >= 0 && lightHue < 360)) {
            throw new IllegalArgumentException(
                    "hueDegrees must lie from 0 to below 360, was " + shadowHue + " and " + lightHue);
        }
    }

    boolean untouched() {
        return shadowChroma == 0 && lightChroma == 0;
    }

    private double part(double lightness, boolean sine) {
        double u = Math.max(0, Math.min(1, lightness / 100));
        double dark = PEAK * u * (1 - u) * (1 - u) * shadowChroma;
        double light = PEAK * u * u * (1 - u) * lightChroma;
        double shadowAngle = shadowHue * Math.PI / 180;
        double lightAngle = lightHue * Math.PI / 180;
        return sine
                ? dark * StrictMath.sin(shadowAngle) + light * StrictMath.sin(lightAngle)
                : dark * StrictMath.cos(shadowAngle) + light * StrictMath.cos(lightAngle);
    }

    /** a* and b* to add at a lightness, for L* 0 to 100 in {@code steps} steps. */
    double[][] table(int steps) {
        double[][] table = new double[2][steps + 1];
        for (int i = 0; i <= steps; i++) {
            table[0][i] = part(100.0 * i / steps, false);
            table[1][i] = part(100.0 * i / steps, true);
        }
        return table;
    }
}
