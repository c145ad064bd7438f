package ebblight.app.cache;

import ebblight.imaging.Inputs;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;

/** What tells a file from what it was before: its path, size and time. */
public final class Stamps {

    private Stamps() {}

    /** The stamp of a file, or of all pictures in a folder and below. */
    public static String of(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            return stamp(path, Files.readAttributes(path, BasicFileAttributes.class));
        }
        StringBuilder text = new StringBuilder();
        Files.walkFileTree(path, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes facts) {
                if (facts.isRegularFile() && Inputs.isPicture(file)) {
                    text.append(stamp(file, facts));
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
                return FileVisitResult.CONTINUE; // whoever reads the folder tells what may not be read
            }
        });
        return text.toString();
    }

    private static String stamp(Path file, BasicFileAttributes facts) {
        return "|" + file + "|" + facts.size() + "|" + facts.lastModifiedTime().toMillis();
    }
}
