package ebblight.core.exposure;

import ebblight.core.numeric.Powers;

/**
 * How one frame was exposed: exact values, so that differences of two frames are exact stops.
 *
 * @param seconds time that the shutter was open
 * @param fNumber aperture
 * @param iso sensitivity
 */
public record Exposure(double seconds, double fNumber, double iso) {

    public Exposure {
        check("exposure time in s", seconds, 1e-6, 86_400);
        check("f-number", fNumber, 0.5, 128);
        check("ISO", iso, 1, 1_000_000);
    }

    private static void check(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " must lie between " + low + " and " + high + ", was " + value);
        }
    }

    /** The exact exposure behind the rounded values that a camera writes: 30 s on the dial is 32 s. */
    public static Exposure fromFile(double seconds, double fNumber, double iso) {
        return new Exposure(
                ThirdStops.exactSeconds(seconds), ThirdStops.exactFNumber(fNumber), ThirdStops.exactIso(iso));
    }

    /** Exposure value of the settings at ISO 100: log2(N²/t) − log2(S/100). */
    public double exposureValue100() {
        return Powers.log2(fNumber * fNumber / seconds) - Powers.log2(iso / 100);
    }

    /** Stops by which this one takes more light than {@code other}, from the same scene without filters. */
    public double stopsOver(Exposure other) {
        return other.exposureValue100() - exposureValue100();
    }
}
