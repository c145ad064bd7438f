package ebblight.app.outing;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** The right to write the documents of a folder, held by one writer of one process at a time. */
public final class FolderLock implements AutoCloseable {

    private static final int TRIES = 100;
    private static final int WAIT_MILLIS = 20;

    private final Path file;
    private final FileChannel channel;
    private final FileLock lock;

    private FolderLock(Path file, FileChannel channel, FileLock lock) {
        this.file = file;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Waits up to two seconds for the lock of {@code folder}.
     *
     * @param file that is to be written, for the words when it cannot be had
     */
    public static FolderLock of(Path folder, Path file) throws IOException {
        FileChannel channel = opened(folder.resolve(".ebblight.lock"), file);
        try {
            for (int i = 0; i < TRIES; i++) {
                try {
                    FileLock lock = channel.tryLock();
                    if (lock != null) {
                        return new FolderLock(file, channel, lock);
                    }
                } catch (OverlappingFileLockException e) {
                    // another writer of this process holds it: wait like for any other
                }
                Thread.sleep(WAIT_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        throw new IOException(file + ": another program keeps it locked; close it and try again");
    }

    private static FileChannel opened(Path lock, Path file) throws IOException {
        try {
            return FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        } catch (IOException e) {
            throw new IOException(
                    file + ": cannot be written (" + e.getMessage()
                            + "); let its folder be written, or use another copy",
                    e);
        }
    }

    /** Fails where the lock was lost. */
    public void check() throws IOException {
        if (!lock.isValid()) {
            throw new IOException(file + ": the lock was lost; try again");
        }
    }

    @Override
    public void close() throws IOException {
        channel.close(); // and with it the lock
    }
}
