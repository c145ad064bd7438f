package ebblight.app.serve;

import ebblight.app.outing.OutingFolder;
import ebblight.engine.RequestException;
import ebblight.imaging.OutputFile;
import io.javalin.http.ContentTooLargeResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Clips and frames dropped on the page: copied into the outing under {@code dropped/}, never over anything. */
final class Dropped {

    private static final long MOST_BYTES = 16L << 30;
    private static final long ROOM_LEFT = 64L << 20;
    private static final Pattern BATCH = Pattern.compile("[a-z0-9-]{1,40}");
    private static final int LONGEST_NAME = 120;

    private final OutingFolder folder;

    Dropped(OutingFolder folder) {
        this.folder = folder;
    }

    /**
     * Takes one file.
     *
     * @param length announced length in bytes, −1 when unknown
     * @param batch folder that frames dropped together share
     */
    Path take(InputStream body, long length, String typed, @Nullable String batch) throws IOException {
        if (length > MOST_BYTES) {
            throw new ContentTooLargeResponse("a file may hold at most 16 GB; cut the clip to a minute");
        }
        String name = name(typed);
        Path into = folder.root().resolve("dropped");
        if (batch != null) {
            if (!BATCH.matcher(batch).matches()) {
                throw new RequestException("batch", "must be small letters, digits and hyphens");
            }
            into = into.resolve(batch);
        }
        Files.createDirectories(into);
        if (length > 0 && Files.getFileStore(into).getUsableSpace() < length + ROOM_LEFT) {
            throw new IOException("no space left on the disk of " + into);
        }
        Path target = free(into, name);
        try (OutputFile out = OutputFile.begin(target)) {
            copy(body, out.part());
            out.commit();
        }
        return target;
    }

    private static void copy(InputStream body, Path part) throws IOException {
        try (OutputStream to = Files.newOutputStream(part)) {
            byte[] buffer = new byte[1 << 16];
            long sum = 0;
            for (int n = body.read(buffer); n >= 0; n = body.read(buffer)) {
                sum += n;
                if (sum > MOST_BYTES) {
                    throw new ContentTooLargeResponse("a file may hold at most 16 GB; cut the clip to a minute");
                }
                to.write(buffer, 0, n);
            }
            if (sum == 0) {
                throw new IOException("the file is empty");
            }
        }
    }

    /** The last part of a typed name, without anything that a file system could misread. */
    private static String name(String typed) {
        String last = typed.substring(Math.max(typed.lastIndexOf('/'), typed.lastIndexOf('\\')) + 1);
        String plain = last.replaceAll("[\\p{Cntrl}<>:\"|?*]", "_").strip();
        if (plain.isEmpty() || plain.startsWith(".") || plain.length() > LONGEST_NAME) {
            throw new RequestException("name", "must be a file's name of at most 120 signs, not beginning with a dot");
        }
        return plain;
    }

    private static Path free(Path into, String name) {
        Path target = into.resolve(name);
        int dot = name.lastIndexOf('.');
        String stem = dot < 0 ? name : name.substring(0, dot);
        String ending = dot < 0 ? "" : name.substring(dot);
        for (int k = 2; Files.exists(target); k++) {
            target = into.resolve(stem + "-" + k + ending);
        }
        return target;
    }
}
