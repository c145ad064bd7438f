package ebblight.core.card;

/** What a frame was taken for. */
public enum Role {
    /** Without filter, before filtered ones: focus, composition and meter. */
    TEST("test"),
    /** Through a filter that others of the view were taken without. */
    FILTERED("filtered"),
    /** One of many in a row, to be stacked or chosen from. */
    BURST("burst"),
    /** Another setting of the same view. */
    VARIANT("variant"),
    /** No light at all: what the sensor makes by itself. */
    DARK("dark"),
    /** A code to be read, no picture. */
    SLATE("slate");

    private final String word;

    Role(String word) {
        this.word = word;
    }

    /** As it stands in documents. */
    public String word() {
        return word;
    }
}
