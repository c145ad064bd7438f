package ebblight.app.outing;

import ebblight.imaging.Inputs;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/** The folder of an outing: what lies in it, and the only door to it. */
public final class OutingFolder {

    private static final Set<String> CLIPS = Set.of("mp4", "mov", "m4v", "avi", "mkv", "webm", "mts", "m2ts", "3gp");
    private static final int DEEPEST = 3;
    private static final int FEWEST_FRAMES = 2;
    private static final int MOST_INPUTS = 200;

    private final Path root;

    private OutingFolder(Path root) {
        this.root = root;
    }

    /** Opens a folder; links in the way to it are followed once and for all. */
    public static OutingFolder open(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            throw new FileNotFoundException(folder + ": does not exist; name a folder with a clip or frames in it");
        }
        if (!Files.isDirectory(folder)) {
            throw new IOException(folder + ": is a file; name the folder that holds it");
        }
        return new OutingFolder(folder.toRealPath());
    }

    public Path root() {
        return root;
    }

    /** The folder's own name, for people. */
    public String name() {
        Path last = root.getFileName();
        return last == null ? root.toString() : last.toString();
    }

    /**
     * A file or folder inside, by its path from the root.
     *
     * @throws FileNotFoundException when there is no such file, or when the path leads out of the folder in any way
     */
    public Path inside(String relative) throws IOException {
        Path path;
        try {
            path = root.resolve(relative).normalize();
        } catch (InvalidPathException e) {
            throw absent(relative);
        }
        if (relative.isEmpty() || relative.indexOf('\0') >= 0 || !path.startsWith(root) || !Files.exists(path)) {
            throw absent(relative);
        }
        Path real = path.toRealPath();
        if (!real.startsWith(root)) {
            throw absent(relative);
        }
        return real;
    }

    private FileNotFoundException absent(String relative) {
        return new FileNotFoundException(
                relative + ": is not in this outing any more; put it back, or choose another clip");
    }

    /** Whether the folder is still there. */
    public boolean there() {
        return Files.isDirectory(root);
    }

    /**
     * Something that can be measured.
     *
     * @param path from the root, with forward slashes
     * @param clip true for a clip, false for a folder of frames
     * @param frames pictures in a folder; 0 for a clip
     */
    public record Input(String path, boolean clip, int frames, long bytes) {}

    /** Clips, and folders that hold two pictures or more, by path. What the program made is left out. */
    public List<Input> inputs() throws IOException {
        List<Input> found = new ArrayList<>();
        look(root, 0, found);
        return found;
    }

    /**
     * Frames that lie loose in the folder itself, beside its folders: as cameras write them, and not what the program made
     * (its record lies beside that).
     */
    public List<Path> loose() throws IOException {
        try (Stream<Path> list = Files.list(root)) {
            return list.filter(this::isLoose).sorted().toList();
        }
    }

    /** Whether a file is a frame that lies loose in the folder itself. */
    public boolean isLoose(Path file) {
        return root.equals(file.getParent())
                && Files.isRegularFile(file)
                && !String.valueOf(file.getFileName()).startsWith(".")
                && Inputs.isPicture(file)
                && !ending(file).equals("png")
                && !Files.exists(file.resolveSibling(file.getFileName() + ".json"));
    }

    private void look(Path folder, int depth, List<Input> found) throws IOException {
        List<Path> entries;
        try (Stream<Path> list = Files.list(folder)) {
            entries = list.filter(p -> !String.valueOf(p.getFileName()).startsWith("."))
                    .sorted()
                    .toList();
        }
        int pictures = 0;
        long bytes = 0;
        for (Path entry : entries) {
            if (Files.isRegularFile(entry) && entry.toRealPath().startsWith(root)) {
                String ending = ending(entry);
                if (CLIPS.contains(ending)) {
                    add(found, new Input(relative(entry), true, 0, Files.size(entry)));
                } else if (Inputs.isPicture(entry)) {
                    pictures++;
                    bytes += Files.size(entry);
                }
            }
        }
        if (pictures >= FEWEST_FRAMES && !folder.equals(root)) {
            add(found, new Input(relative(folder), false, pictures, bytes));
        }
        for (Path entry : entries) {
            boolean made = depth == 0 && String.valueOf(entry.getFileName()).equals("made");
            if (Files.isDirectory(entry)
                    && depth < DEEPEST
                    && !made
                    && entry.toRealPath().startsWith(root)) {
                look(entry, depth + 1, found);
            }
        }
    }

    private static void add(List<Input> found, Input input) {
        if (found.size() < MOST_INPUTS) {
            found.add(input);
        }
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    /** The path of something inside, from the root, with forward slashes. */
    public String relative(Path inside) {
        return root.relativize(inside).toString().replace('\\', '/');
    }
}
