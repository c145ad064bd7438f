package ebblight.core.outing;

import ebblight.core.sky.Sky;
import java.util.Set;

/** The hour shall fall into one of these parts of the day. */
record TwilightCondition(Sky sky, Set<Twilight> kinds) implements Condition {

    TwilightCondition {
        kinds = Set.copyOf(kinds);
        if (kinds.isEmpty()) {
            throw new IllegalArgumentException("name at least one part of the day");
        }
    }

    @Override
    public String word() {
        return "twilight";
    }

    @Override
    public String unit() {
        return "°";
    }

    @Override
    public double margin(double epochSeconds) {
        double altitude = sky.sun(epochSeconds).altitudeDegrees();
        double best = Double.NEGATIVE_INFINITY;
        for (Twilight kind : kinds) {
            best = Math.max(best, kind.margin(altitude));
        }
        return best;
    }

    @Override
    public int look(double epochSeconds, double margin) {
        return Looking.again(margin, SkyConditions.DEGREES_PER_MINUTE, 0);
    }

    @Override
    public String words(double fromEpochSeconds, double toEpochSeconds) {
        double altitude = sky.sun((fromEpochSeconds + toEpochSeconds) / 2).altitudeDegrees();
        for (Twilight kind : kinds) {
            if (kind.margin(altitude) >= 0) {
                return kind == Twilight.DAY || kind == Twilight.NIGHT ? kind.word() : kind.word() + " twilight";
            }
        }
        return "twilight";
    }
}
