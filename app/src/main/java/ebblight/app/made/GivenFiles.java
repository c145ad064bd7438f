package ebblight.app.made;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The files of a folder that an option names. */
public final class GivenFiles {

    private GivenFiles() {}

    /** Every file right in {@code folder} that may be read and is not hidden, in order of their names. */
    public static List<Path> in(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(f -> Files.isRegularFile(f)
                            && Files.isReadable(f)
                            && !String.valueOf(f.getFileName()).startsWith("."))
                    .sorted()
                    .toList();
        }
    }

    /** Takes a folder away in which nothing but such files lies. */
    public static void remove(Path folder) throws IOException {
        for (Path each : in(folder)) {
            Files.delete(each);
        }
        Files.delete(folder);
    }
}
