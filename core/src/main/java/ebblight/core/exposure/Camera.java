package ebblight.core.exposure;

import ebblight.core.optics.DepthOfField;

/**
 * What a camera and the lens on it can do.
 *
 * @param widestFNumber exact, the smallest f-number
 * @param narrowestFNumber exact, the largest
 * @param lowestIso exact; below {@code baseIso} it is an extended value that costs highlights
 * @param highestIso exact
 * @param baseIso exact, with the least noise at full range
 * @param timedLimitSeconds longest time the camera counts itself (32 s behind a dial's 30)
 * @param sharpestFrom f-number from which the lens is at its sharpest
 * @param sharpestTo f-number up to which it is
 * @param darkFrame whether it takes an in-camera dark frame after long exposures
 * @param sensorWidthMillimetres sensor width
 * @param sensorHeightMillimetres sensor height
 * @param focalMillimetres focal length of the lens
 * @param opticalFinder whether light can enter by an optical finder
 */
public record Camera(
        double widestFNumber,
        double narrowestFNumber,
        double lowestIso,
        double highestIso,
        double baseIso,
        double timedLimitSeconds,
        double sharpestFrom,
        double sharpestTo,
        boolean darkFrame,
        double sensorWidthMillimetres,
        double sensorHeightMillimetres,
        double focalMillimetres,
        boolean opticalFinder) {

    /** Exposures from here on get an in-camera dark frame: common practice of camera makers. */
    private static final double DARK_FRAME_FROM_SECONDS = 1;

    public Camera {
        inOrder("f-numbers", widestFNumber, narrowestFNumber, 0.5, 128);
        inOrder("sharpest f-numbers", sharpestFrom, sharpestTo, 0.5, 128);
        inOrder("ISO", lowestIso, highestIso, 1, 1_000_000);
        within("base ISO", baseIso, lowestIso, highestIso);
        within("timed limit", timedLimitSeconds, 1e-3, 86_400);
        within("sensor width in mm", sensorWidthMillimetres, 1, 500);
        within("sensor height in mm", sensorHeightMillimetres, 1, 500);
        within("focal length in mm", focalMillimetres, 1, 5000);
    }

    private static void inOrder(String name, double low, double high, double least, double most) {
        if (!(low >= least && low <= high && high <= most)) {
            throw new IllegalArgumentException(name + " must run from a smaller to a larger value between " + least
                    + " and " + most + ", were " + low + " to " + high);
        }
    }

    private static void within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " must lie between " + low + " and " + high + ", was " + value);
        }
    }

    /** f/2.8 to f/22, ISO 100 to 6400, timed to 30 s on the dial, 24 mm on 36 × 24 mm. */
    public static Camera standard() {
        return new Camera(
                ThirdStops.fNumber(9),
                ThirdStops.fNumber(27),
                100,
                6400,
                100,
                32,
                ThirdStops.fNumber(15),
                ThirdStops.fNumber(21),
                false,
                36,
                24,
                24,
                true);
    }

    /** Seconds from opening the shutter until the camera is ready again. */
    public double busySeconds(double openSeconds) {
        return darkFrame && openSeconds >= DARK_FRAME_FROM_SECONDS ? 2 * openSeconds : openSeconds;
    }

    /** Circle of confusion in millimetres. */
    public double circleMillimetres() {
        return DepthOfField.circleMillimetres(sensorWidthMillimetres, sensorHeightMillimetres);
    }
}
