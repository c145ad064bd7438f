package ebblight.app.made;

import com.grack.nanojson.JsonObject;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A file that a result was made from, as it was then.
 *
 * @param as what it was given as: INPUT, or the option that named it or its folder
 * @param path where it lies; relative to the folder of the record where both lie on one disk
 * @param bytes its length
 * @param sha256 of its bytes, in lower-case hexadecimal digits
 */
public record Source(String as, String path, long bytes, String sha256) {

    /** The file as it is now. */
    static Source of(String as, Path file, Path folder) throws IOException {
        return new Source(as, relative(file, folder), Files.size(file), sha256(file));
    }

    /** SHA-256 (FIPS 180-4) of a file's bytes. */
    public static String sha256(Path file) throws IOException {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
        byte[] piece = new byte[1 << 20];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
                digest.update(piece, 0, n);
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** The path from {@code folder} to {@code file}, with forward slashes; whole where there is no such path. */
    static String relative(Path file, Path folder) {
        Path to = file.toAbsolutePath().normalize();
        Path from = folder.toAbsolutePath().normalize();
        boolean oneDisk = from.getRoot() != null && from.getRoot().equals(to.getRoot());
        return (oneDisk ? from.relativize(to) : to).toString().replace('\\', '/');
    }

    /** Why the file cannot stand for what it was; empty when it is the same. */
    String trouble(Path folder) throws IOException {
        Path file = folder.resolve(path);
        if (!Files.isRegularFile(file)) {
            return "is missing";
        }
        if (!Files.isReadable(file)) {
            return UnreadableInputException.reason(new AccessDeniedException(path));
        }
        boolean same = Files.size(file) == bytes && sha256(file).equals(sha256);
        return same ? "" : "has changed since";
    }

    JsonObject json() {
        JsonObject json = new JsonObject();
        json.put("as", as);
        json.put("path", path);
        json.put("bytes", bytes);
        json.put("sha256", sha256);
        return json;
    }
}
