package ebblight.app.ask;

/** The command was called in a way that cannot be meant: the message names the option and what it expects. */
public final class UsageException extends RuntimeException {
    private static final long serialVersionUID = 1;

    public UsageException(String message) {
        super(message);
    }
}
