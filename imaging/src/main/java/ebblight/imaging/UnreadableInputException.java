package ebblight.imaging;

import java.io.IOException;
import java.nio.file.Path;

/** A file or folder from which no frame can be had: names it and says why and what to do. */
public final class UnreadableInputException extends IOException {
    private static final long serialVersionUID = 1;

    public UnreadableInputException(Path path, String reason) {
        super(path + ": " + reason);
    }

    public UnreadableInputException(String message) {
        super(message);
    }
}
