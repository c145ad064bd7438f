package ebblight.imaging;

import java.nio.file.Path;

/** Pictures that do not say when they were taken, where that is needed and no rate was given. */
public final class NoTimesException extends RuntimeException {
    private static final long serialVersionUID = 1;

    NoTimesException(Path file) {
        super(file + ": Exif does not say when it was taken to a part of a second; give the rate with --fps"
                + " (frames per second; 1/12 for one every 12 s)");
    }
}
