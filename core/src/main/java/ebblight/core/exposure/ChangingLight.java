package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import java.util.OptionalDouble;

/**
 * Light that changes steadily during the exposure: it falls as 2^(−rt), r stops a minute, positive when it grows
 * darker, negative when brighter.
 */
public record ChangingLight(double stopsPerMinute) {

    private static final double LN_2 = StrictMath.log(2);
    private static final double STEADY = 1e-9;

    public ChangingLight {
        if (!(Math.abs(stopsPerMinute) <= 5)) {
            throw new IllegalArgumentException(
                    "light changes by at most 5 stops a minute either way, was " + stopsPerMinute);
        }
    }

    /** Light that stays as it is. */
    public static ChangingLight steady() {
        return new ChangingLight(0);
    }

    private double perSecond() {
        return stopsPerMinute / 60 * LN_2;
    }

    /** Seconds of starting light that {@code openSeconds} gather: ∫ 2^(−rt) dt. */
    public double gathered(double openSeconds) {
        double k = perSecond();
        return Math.abs(k * openSeconds) < STEADY ? openSeconds : (1 - StrictMath.exp(-k * openSeconds)) / k;
    }

    /** Seconds to keep the shutter open to gather {@code wantedSeconds}; empty when it fades faster than that. */
    public OptionalDouble openFor(double wantedSeconds) {
        double k = perSecond();
        if (Math.abs(k * wantedSeconds) < STEADY) {
            return OptionalDouble.of(wantedSeconds);
        }
        double left = 1 - k * wantedSeconds;
        return left > 0 ? OptionalDouble.of(-StrictMath.log(left) / k) : OptionalDouble.empty();
    }

    /** Most seconds of starting light that can ever be gathered; infinite unless it fades. */
    public double longestEquivalentSeconds() {
        return stopsPerMinute > 0 ? 1 / perSecond() : Double.POSITIVE_INFINITY;
    }

    /** Mean light over {@code openSeconds} against its start, in stops. */
    public double meanStops(double openSeconds) {
        return Powers.log2(gathered(openSeconds) / openSeconds);
    }
}
