package ebblight.app.serve;

/** A request that may not be answered at all. */
final class ForbiddenException extends RuntimeException {
    private static final long serialVersionUID = 1;

    ForbiddenException(String message) {
        super(message);
    }
}
