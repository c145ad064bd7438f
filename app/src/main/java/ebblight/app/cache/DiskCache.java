package ebblight.app.cache;

import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Files that can be made again, by the digest of what they were made from. Never grows beyond its bound: the ones not
 * used for longest go first.
 */
public final class DiskCache {

    private static final int CHECK_EVERY = 50;

    private final Path folder;
    private final long mostBytes;
    private final Clock clock;
    private int written;

    public DiskCache(Path folder, long mostBytes, Clock clock) throws IOException {
        this.folder = Files.createDirectories(folder);
        this.mostBytes = mostBytes;
        this.clock = clock;
        shrink();
    }

    /** A name for what is made from {@code parts}. */
    public static String name(String ending, String... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String part : parts) {
                digest.update(part.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return HexFormat.of().formatHex(digest.digest(), 0, 16) + ending;
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public Optional<byte[]> get(String name) throws IOException {
        Path file = folder.resolve(name);
        try {
            byte[] bytes = Files.readAllBytes(file);
            Files.setLastModifiedTime(file, FileTime.from(clock.instant()));
            return Optional.of(bytes);
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    public Path path(String name) {
        return folder.resolve(name);
    }

    public boolean has(String name) {
        return Files.exists(folder.resolve(name));
    }

    public synchronized void put(String name, byte[] bytes) throws IOException {
        OutputFile.write(folder.resolve(name), bytes);
        Files.setLastModifiedTime(folder.resolve(name), FileTime.from(clock.instant()));
        if (++written % CHECK_EVERY == 0) {
            shrink();
        }
    }

    private record Entry(Path file, long bytes, FileTime used) {}

    /** The size of a file, which joins the entries; 0 when another server took it away meanwhile. */
    private static long add(Path file, List<Entry> entries) throws IOException {
        try {
            BasicFileAttributes facts = Files.readAttributes(file, BasicFileAttributes.class);
            entries.add(new Entry(file, facts.size(), facts.lastModifiedTime()));
            return facts.size();
        } catch (NoSuchFileException e) {
            return 0;
        }
    }

    /** Takes the longest unused files away until the rest is within nine tenths of the bound. */
    public synchronized void shrink() throws IOException {
        List<Entry> entries = new ArrayList<>();
        long sum = 0;
        try (Stream<Path> list = Files.list(folder)) {
            for (Path file : list.toList()) {
                sum += add(file, entries);
            }
        }
        if (sum <= mostBytes) {
            return;
        }
        entries.sort(Comparator.comparing(Entry::used));
        for (Entry entry : entries) {
            if (sum <= mostBytes / 10 * 9) {
                break;
            }
            Files.deleteIfExists(entry.file());
            sum -= entry.bytes();
        }
    }
}
