package ebblight.core.exposure;

/** A typed value that cannot be read: says what was typed and what was expected. */
public final class UnreadableTextException extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    public UnreadableTextException(String typed, String expected) {
        super("\"" + typed + "\" cannot be read; expected " + expected);
    }
}
