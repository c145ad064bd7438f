package ebblight.imaging;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
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

    /** Fails where {@code file} is not there or may not be read. */
    public static void unlessReadable(Path file) throws UnreadableInputException {
        if (!Files.isReadable(file)) {
            throw new UnreadableInputException(
                    file, reason(Files.exists(file) ? new AccessDeniedException("") : new NoSuchFileException("")));
        }
    }

    /** Why a file could not be read, as a sentence goes on after its name. */
    public static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "does not exist";
        }
        if (e instanceof AccessDeniedException) {
            return "may not be read (permission denied)";
        }
        if (e instanceof NotDirectoryException) {
            return "is no folder";
        }
        String told = e instanceof FileSystemException of && of.getReason() != null ? of.getReason() : e.getMessage();
        return "could not be read: " + told;
    }

    /** The whole sentence; an error of the file system that only names a file is given its reason. */
    public static String sentence(IOException e) {
        return e instanceof FileSystemException of && of.getFile() != null && of.getReason() == null
                ? of.getFile() + ": " + reason(e)
                : String.valueOf(e.getMessage());
    }
}
