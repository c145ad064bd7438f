package ebblight.imaging.card;

import ebblight.imaging.Inputs;
import ebblight.imaging.OpenedPicture;
import ebblight.imaging.Skipped;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;

/** The files of a card, folders in folders, put together to shots. */
final class CardFiles extends SimpleFileVisitor<Path> {

    /** Written by programs beside pictures and nothing that a person would miss in the list. */
    private static final Set<String> BESIDE = Set.of("xmp", "part");

    private final Predicate<Path> wanted;
    private final Map<String, List<Path>> byStem = new TreeMap<>();
    private final List<Skipped> skipped = new ArrayList<>();

    /**
     * One opening of the shutter.
     *
     * @param file what is measured: the JPEG where there is one, since it is read fastest
     * @param companions the others
     */
    record Shot(Path file, List<Path> companions) {}

    private CardFiles(Predicate<Path> wanted) {
        this.wanted = wanted;
    }

    /** The files in {@code folder} and below. */
    static CardFiles in(Path folder) throws IOException {
        return in(folder, Integer.MAX_VALUE, file -> true);
    }

    /** The files that are wanted in {@code folder}, and so many folders down. */
    static CardFiles in(Path folder, int depth, Predicate<Path> wanted) throws IOException {
        if (!Files.isDirectory(folder)) {
            throw new UnreadableInputException(
                    folder, Files.exists(folder) ? "is no folder; name the folder of a card" : "does not exist");
        }
        CardFiles files = new CardFiles(wanted);
        Files.walkFileTree(folder, Set.of(), depth, files);
        return files;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
        String name = file.getFileName().toString();
        if (name.startsWith(".") || attributes.isDirectory() || !wanted.test(file)) {
            return FileVisitResult.CONTINUE;
        }
        if (attributes.isRegularFile() && Inputs.isPicture(file)) {
            byStem.computeIfAbsent(stem(file), k -> new ArrayList<>()).add(file);
        } else if (!BESIDE.contains(ending(name))) {
            String kind = attributes.isRegularFile() ? "is no picture (JPEG, PNG, TIFF or RAW)" : "is no plain file";
            skipped.add(new Skipped(file, kind));
        }
        return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException e) {
        skipped.add(new Skipped(file, UnreadableInputException.reason(e)));
        return FileVisitResult.CONTINUE;
    }

    private static String ending(String name) {
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    /** Path without its ending. */
    private static String stem(Path file) {
        String path = file.toString();
        int dot = path.lastIndexOf('.');
        return dot < 0 ? path : path.substring(0, dot);
    }

    List<Shot> shots() {
        List<Shot> shots = new ArrayList<>();
        for (List<Path> files : byStem.values()) {
            Collections.sort(files);
            List<Path> raws = files.stream().filter(OpenedPicture::isRaw).toList();
            List<Path> others =
                    files.stream().filter(f -> !OpenedPicture.isRaw(f)).toList();
            if (others.isEmpty()) {
                raws.forEach(f -> shots.add(new Shot(f, List.of())));
            } else {
                shots.add(new Shot(others.get(0), raws));
                others.stream().skip(1).forEach(f -> shots.add(new Shot(f, List.of())));
            }
        }
        return shots;
    }

    List<Skipped> skipped() {
        return List.copyOf(skipped);
    }
}
