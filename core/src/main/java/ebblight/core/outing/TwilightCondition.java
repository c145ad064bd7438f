package ebblight.core.outing;

import ebblight.core.sky.Sky;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The hour shall fall into one of these parts of the day. */
record TwilightCondition(Sky sky, Set<Twilight> kinds) implements Condition {

    private static final double LOOK_SECONDS = 300;
    private static final double MOST_LOOKS = 300;

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
        Set<Twilight> met = EnumSet.noneOf(Twilight.class);
        int looks = (int) Math.min(MOST_LOOKS, 1 + Math.ceil((toEpochSeconds - fromEpochSeconds) / LOOK_SECONDS));
        for (int i = 0; i <= looks; i++) {
            double altitude = sky.sun(fromEpochSeconds + (toEpochSeconds - fromEpochSeconds) * i / looks)
                    .altitudeDegrees();
            for (Twilight kind : kinds) {
                if (kind.margin(altitude) >= 0) {
                    met.add(kind);
                }
            }
        }
        List<String> words = new ArrayList<>();
        for (Twilight kind : met) {
            words.add(kind == Twilight.DAY || kind == Twilight.NIGHT ? kind.word() : kind.word() + " twilight");
        }
        return String.join(", ", words);
    }
}
