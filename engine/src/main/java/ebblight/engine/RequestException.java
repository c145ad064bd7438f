package ebblight.engine;

/** A request that cannot be understood: names the field, what it held, and what was expected. */
public final class RequestException extends RuntimeException {
    private static final long serialVersionUID = 1;

    public RequestException(String field, String problem) {
        super(field + ": " + problem);
    }
}
