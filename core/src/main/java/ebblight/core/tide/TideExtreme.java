package ebblight.core.tide;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A high or a low water.
 *
 * @param time of it
 * @param heightMetres above the datum
 * @param kind high or low
 */
public record TideExtreme(Instant time, double heightMetres, Kind kind) {

    private static final double STEP_SECONDS = 900;
    private static final double TOLERANCE_SECONDS = 0.5;

    /** High or low. */
    public enum Kind {
        /** High water. */
        HIGH("high"),
        /** Low water. */
        LOW("low");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** One lower-case word. */
        public String word() {
            return word;
        }

        /** High or low by its word. */
        public static Kind of(String word) {
            for (Kind kind : values()) {
                if (kind.word.equals(word)) {
                    return kind;
                }
            }
            throw new IllegalArgumentException("\"" + word + "\" is neither high nor low");
        }
    }

    /**
     * All high and low waters of a curve between two instants at which it is known throughout, both included; those of a
     * table as they stand in it, its first and last among them.
     */
    public static List<TideExtreme> between(TideCurve curve, double fromEpochSeconds, double toEpochSeconds) {
        if (curve instanceof TideTable table) {
            return table.extremes().stream()
                    .filter(e ->
                            Epoch.seconds(e.time()) >= fromEpochSeconds && Epoch.seconds(e.time()) <= toEpochSeconds)
                    .toList();
        }
        List<TideExtreme> extremes = new ArrayList<>();
        for (Crossings.Crossing turn : Crossings.of(
                curve::risingMetresPerHour, fromEpochSeconds, toEpochSeconds, STEP_SECONDS, TOLERANCE_SECONDS)) {
            extremes.add(new TideExtreme(
                    Epoch.instant(turn.at()), curve.heightMetres(turn.at()), turn.rising() ? Kind.LOW : Kind.HIGH));
        }
        return extremes;
    }
}
