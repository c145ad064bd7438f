package ebblight.core.light;

import ebblight.core.exposure.MeterReading;
import ebblight.core.numeric.Crossings;
import java.util.List;
import java.util.OptionalDouble;

/** When the light is right for a time, an aperture and a filter, and what the exposure is while it changes. */
public final class LightTimes {

    private static final double STEP_SECONDS = 300;
    private static final double TOLERANCE_SECONDS = 0.5;
    private static final double LONGEST_EXPOSURE_SECONDS = 14_400;
    private static final int PIECES = 64;

    private LightTimes() {}

    /**
     * The first instant at which an exposure is right or the light already too dark for it.
     *
     * @param model of the light
     * @param fromEpochSeconds start of the search
     * @param toEpochSeconds its end
     * @param exposureValue100 that the exposure wants: log2(N²/t) − log2(S/100) − filter stops
     */
    public static OptionalDouble darkEnough(
            LightModel model, double fromEpochSeconds, double toEpochSeconds, double exposureValue100) {
        if (model.exposureValue100(fromEpochSeconds) <= exposureValue100) {
            return OptionalDouble.of(fromEpochSeconds);
        }
        return first(model, fromEpochSeconds, toEpochSeconds, exposureValue100, false);
    }

    /** The first instant at which it is bright enough, as {@link #darkEnough} for mornings. */
    public static OptionalDouble brightEnough(
            LightModel model, double fromEpochSeconds, double toEpochSeconds, double exposureValue100) {
        if (model.exposureValue100(fromEpochSeconds) >= exposureValue100) {
            return OptionalDouble.of(fromEpochSeconds);
        }
        return first(model, fromEpochSeconds, toEpochSeconds, exposureValue100, true);
    }

    private static OptionalDouble first(LightModel model, double from, double to, double wanted, boolean rising) {
        List<Crossings.Crossing> crossings =
                Crossings.of(t -> model.exposureValue100(t) - wanted, from, to, STEP_SECONDS, TOLERANCE_SECONDS);
        return crossings.stream()
                .filter(c -> c.rising() == rising)
                .mapToDouble(Crossings.Crossing::at)
                .findFirst();
    }

    /** EV at ISO 100 that an exposure wants behind filters of so many stops. */
    public static double wantedExposureValue100(double fNumber, double seconds, double iso, double filterStops) {
        if (!(Math.abs(filterStops) <= 60)) {
            throw new IllegalArgumentException("filters take no more than 60 stops, were given " + filterStops);
        }
        return new MeterReading(fNumber, seconds, iso).exposureValue100() + filterStops;
    }

    /**
     * Mean exposure value at ISO 100 of the light over an exposure: the light is averaged, not its logarithm.
     *
     * @param seconds the shutter stays open, at most four hours
     */
    public static double meanExposureValue100(LightModel model, double fromEpochSeconds, double seconds) {
        double sum = 0;
        for (int i = 0; i < PIECES; i++) {
            sum += model.lux(fromEpochSeconds + (i + 0.5) / PIECES * seconds);
        }
        return LightModel.exposureValue100OfLux(sum / PIECES);
    }

    /**
     * Seconds to keep the shutter open, from an instant on, so that the exposure is right over its whole length; empty
     * when four hours are not enough.
     *
     * @param secondsInTheLightNow what it would take if the light stayed
     */
    public static OptionalDouble openSeconds(LightModel model, double fromEpochSeconds, double secondsInTheLightNow) {
        double wanted = model.lux(fromEpochSeconds) * secondsInTheLightNow;
        double low = 0;
        double high = LONGEST_EXPOSURE_SECONDS;
        if (gathered(model, fromEpochSeconds, high) < wanted) {
            return OptionalDouble.empty();
        }
        while (high - low > 1e-3) {
            double middle = 0.5 * (low + high);
            if (gathered(model, fromEpochSeconds, middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of(high);
    }

    private static double gathered(LightModel model, double from, double seconds) {
        double sum = 0;
        for (int i = 0; i < PIECES; i++) {
            sum += model.lux(from + (i + 0.5) / PIECES * seconds);
        }
        return sum / PIECES * seconds;
    }
}
