package ebblight.core;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Reads the files of outside reference values; each begins with its source. */
public final class Oracles {

    private Oracles() {}

    /** The text of a file of {@code oracles/}. */
    public static String text(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(Oracles.class.getResourceAsStream("/oracles/" + name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The rows of a comma-separated file without comments and heading. */
    public static List<String[]> rows(String name) throws IOException {
        List<String[]> rows = new ArrayList<>();
        boolean heading = true;
        for (String line : text(name).split("\r?\n", -1)) {
            if (!line.isEmpty() && !line.startsWith("#")) {
                if (!heading) {
                    rows.add(line.split(",", -1));
                }
                heading = false;
            }
        }
        return rows;
    }
}
