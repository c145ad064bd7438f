package ebblight.core.outing;

/** One wish about the hour: holds or not at an instant, says by how much, and for how long that cannot change. */
interface Condition {

    /** The wish's name in documents. */
    String word();

    /** Unit of the margin, for a person. */
    String unit();

    /**
     * How much room there is: 0 or more where the wish holds, negative where it does not, negative infinity where it is
     * not known.
     */
    double margin(double epochSeconds);

    /**
     * Whole minutes, at least 1, after which to look again: at every minute before that the wish holds as it did.
     *
     * @param margin what {@link #margin} gave at this instant
     */
    int look(double epochSeconds, double margin);

    /** What it was from one instant to another, for a person: "sun 4.2° to 0.3° high". */
    String words(double fromEpochSeconds, double toEpochSeconds);
}
