package ebblight.imaging;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * A file that appears whole or not at all: written beside its place under a name ending in {@code .part}, synced, then
 * moved. Closing without {@link #commit()} takes the unfinished file away.
 */
public final class OutputFile implements AutoCloseable {

    private static final String ENDING = ".part";

    private final Path target;
    private final Path part;
    private boolean committed;

    private OutputFile(Path target, Path part) {
        this.target = target;
        this.part = part;
    }

    /** Begins a file at {@code target}; fails at once where nothing can be written. */
    public static OutputFile begin(Path target) throws IOException {
        Path folder = target.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException(target + ": the folder " + folder + " does not exist; make it or choose another");
        }
        if (Files.isDirectory(target)) {
            throw new IOException(target + ": is a folder; name a file in it");
        }
        try {
            // Not createTempFile: its files can be read by their owner only, and the result keeps that.
            Path part = folder.resolve(
                    "." + target.getFileName() + "." + ProcessHandle.current().pid() + ENDING);
            Files.deleteIfExists(part);
            removeOrphans(folder, target);
            return new OutputFile(target, Files.createFile(part));
        } catch (AccessDeniedException e) {
            throw new IOException(target + ": cannot be written (permission denied); choose another folder", e);
        } catch (IOException e) {
            throw new IOException(target + ": cannot be written (" + e.getMessage() + "); choose another folder", e);
        }
    }

    /** Takes away what writers of the same target left when they were killed: their process is gone, and an hour ago. */
    private static void removeOrphans(Path folder, Path target) throws IOException {
        String name = "." + target.getFileName() + ".";
        Instant old = Instant.now().minus(Duration.ofHours(1));
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, f -> isPartOf(name, f))) {
            for (Path part : parts) {
                String file = part.getFileName().toString();
                long writer = Long.parseLong(file.substring(name.length(), file.length() - ENDING.length()));
                if (ProcessHandle.of(writer).isEmpty()
                        && Files.getLastModifiedTime(part).toInstant().isBefore(old)) {
                    Files.deleteIfExists(part);
                }
            }
        }
    }

    private static boolean isPartOf(String name, Path file) {
        String other = file.getFileName().toString();
        return other.startsWith(name)
                && other.endsWith(ENDING)
                && other.substring(name.length(), Math.max(name.length(), other.length() - ENDING.length()))
                        .matches("[0-9]{1,18}");
    }

    /** Where to write until {@link #commit()}. */
    public Path part() {
        return part;
    }

    /** Syncs what was written and moves it into place. */
    public void commit() throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        try {
            Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
        }
        committed = true;
    }

    @Override
    public void close() throws IOException {
        if (!committed) {
            Files.deleteIfExists(part);
        }
    }

    /** Writes {@code bytes} to {@code target} whole or not at all. */
    public static void write(Path target, byte[] bytes) throws IOException {
        try (OutputFile out = begin(target)) {
            Files.write(out.part(), bytes);
            out.commit();
        }
    }

    /** Whether nothing more fits on the disk; the words are those of Linux and macOS, and of Windows. */
    public static boolean diskIsFull(Exception e) {
        String words = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        return e instanceof IOException
                && (words.contains("no space left") || words.contains("not enough space on the disk"));
    }
}
