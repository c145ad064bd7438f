package ebblight.core.exposure;

/**
 * A way on where no setting reaches the time.
 *
 * @param kind what it takes
 * @param stops how many stops it must bring
 * @param words for a person
 */
public record WayOut(Kind kind, double stops, String words) {

    /** What a way out takes. */
    public enum Kind {
        /** Another filter. */
        FILTER("filter"),
        /** Other light. */
        WAIT("wait"),
        /** Many short frames instead of one long exposure. */
        BURST("burst"),
        /** Another time. */
        TIME("time");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The kind in one lower-case word. */
        public String word() {
            return word;
        }
    }
}
