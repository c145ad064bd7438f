package ebblight.core.outing;

import java.time.Instant;
import java.util.List;

/**
 * A time in which all wishes hold.
 *
 * @param start first whole minute
 * @param end last whole minute
 * @param minutes how many minutes that are, both counted
 * @param why what holds, in words
 * @param water which way the water runs
 */
public record HourWindow(Instant start, Instant end, long minutes, List<String> why, Water water) {

    public HourWindow {
        why = List.copyOf(why);
    }

    /** Which way the water runs in a window. */
    public enum Water {
        /** Falling throughout: the way back grows wider. */
        FALLING("falling"),
        /** Both ways. */
        TURNING("turning"),
        /** Rising throughout. */
        RISING("rising"),
        /** Not known. */
        UNKNOWN("unknown");

        private final String word;

        Water(String word) {
            this.word = word;
        }

        /** One lower-case word. */
        public String word() {
            return word;
        }
    }
}
