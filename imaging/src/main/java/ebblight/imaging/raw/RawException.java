package ebblight.imaging.raw;

import java.io.IOException;

/** A RAW file could not be developed; the message continues the file's name. */
public final class RawException extends IOException {

    private static final long serialVersionUID = 1;

    RawException(String reason) {
        super(reason);
    }
}
