package ebblight.core.tide;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** When the water stands between two heights and runs the way that is wanted. */
public final class TideSpans {

    private static final double STEP_SECONDS = 900;
    private static final double TOLERANCE_SECONDS = 0.5;

    private TideSpans() {}

    /** Which way the water runs. */
    public enum Direction {
        /** Rising. */
        RISING("rising"),
        /** Falling. */
        FALLING("falling"),
        /** Either. */
        ANY("any");

        private final String word;

        Direction(String word) {
            this.word = word;
        }

        /** One lower-case word. */
        public String word() {
            return word;
        }

        /** Whether water that rises so fast, in metres an hour, runs this way. */
        public boolean holds(double risingMetresPerHour) {
            return this == ANY || (this == RISING ? risingMetresPerHour > 0 : risingMetresPerHour < 0);
        }

        /** The direction of one word. */
        public static Direction of(String word) {
            for (Direction direction : values()) {
                if (direction.word.equals(word)) {
                    return direction;
                }
            }
            throw new IllegalArgumentException(
                    "\"" + word + "\" is no direction of the tide; expected rising, falling or any");
        }
    }

    /** A span of time. */
    public record Span(Instant from, Instant to) {}

    /** All spans between two instants in which the height lies between two heights, running as wanted. */
    public static List<Span> between(
            TideCurve curve,
            double fromEpochSeconds,
            double toEpochSeconds,
            double lowestMetres,
            double highestMetres,
            Direction direction) {
        List<Double> cuts = new ArrayList<>();
        cuts.add(fromEpochSeconds);
        add(
                cuts,
                Crossings.of(
                        t -> curve.heightMetres(t) - lowestMetres,
                        fromEpochSeconds,
                        toEpochSeconds,
                        STEP_SECONDS,
                        TOLERANCE_SECONDS));
        add(
                cuts,
                Crossings.of(
                        t -> curve.heightMetres(t) - highestMetres,
                        fromEpochSeconds,
                        toEpochSeconds,
                        STEP_SECONDS,
                        TOLERANCE_SECONDS));
        if (direction != Direction.ANY) {
            add(
                    cuts,
                    Crossings.of(
                            curve::risingMetresPerHour,
                            fromEpochSeconds,
                            toEpochSeconds,
                            STEP_SECONDS,
                            TOLERANCE_SECONDS));
        }
        cuts.add(toEpochSeconds);
        cuts.sort(Double::compare);
        List<Span> spans = new ArrayList<>();
        double open = Double.NaN;
        for (int i = 0; i + 1 < cuts.size(); i++) {
            double middle = 0.5 * (cuts.get(i) + cuts.get(i + 1));
            double height = curve.heightMetres(middle);
            boolean holds = height >= lowestMetres
                    && height <= highestMetres
                    && direction.holds(curve.risingMetresPerHour(middle));
            if (holds && Double.isNaN(open)) {
                open = cuts.get(i);
            }
            if (!holds && !Double.isNaN(open)) {
                spans.add(new Span(Epoch.instant(open), Epoch.instant(cuts.get(i))));
                open = Double.NaN;
            }
        }
        if (!Double.isNaN(open)) {
            spans.add(new Span(Epoch.instant(open), Epoch.instant(toEpochSeconds)));
        }
        return spans;
    }

    private static void add(List<Double> cuts, List<Crossings.Crossing> crossings) {
        for (Crossings.Crossing crossing : crossings) {
            cuts.add(crossing.at());
        }
    }
}
