package ebblight.core.motion;

/** How a part of the picture moves. */
public enum Kind {
    /** Stands still: rock, post, ground. */
    FIXED(0, "fixed"),
    /** Keeps its shape and travels: cloud. */
    DRIFTING(1, "drifting"),
    /** Renews its texture all the time: water. */
    FLOWING(2, "flowing"),
    /** Moves about a place of rest: branch, grass. */
    SWAYING(3, "swaying");

    private final int column;
    private final String word;

    Kind(int column, String word) {
        this.column = column;
        this.word = word;
    }

    /** Column of the region model, 0 to 3. */
    int column() {
        return column;
    }

    /** The kind in one lower-case word, as it stands in names of regions. */
    public String word() {
        return word;
    }

    static Kind ofColumn(int column) {
        return switch (column) {
            case 0 -> FIXED;
            case 1 -> DRIFTING;
            case 2 -> FLOWING;
            case 3 -> SWAYING;
            default -> throw new IllegalArgumentException("kinds have columns 0 to 3, not " + column);
        };
    }
}
