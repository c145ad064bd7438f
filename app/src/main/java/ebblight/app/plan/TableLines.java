package ebblight.app.plan;

import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Lines of a typed table with their numbers: empty ones and those that begin with # are passed over. */
final class TableLines {

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private TableLines() {}

    /**
     * One line.
     *
     * @param number from 1
     * @param fields what stands between its commas, without blanks at the ends
     */
    record Line(Path file, int number, List<String> fields) {

        /** What is wrong with the line, naming file and line. */
        IOException bad(String problem) {
            return new UnreadableInputException(file, "line " + number + " " + problem);
        }
    }

    /** The lines under the first one, which is the heading. */
    static List<Line> underHeading(List<Line> lines) {
        return lines.subList(Math.min(1, lines.size()), lines.size());
    }

    /** A name from outside as that of a file, for words only; what cannot be one is "the table". */
    static Path called(String name) {
        try {
            return Path.of(name.isBlank() ? "the table" : name);
        } catch (InvalidPathException e) {
            return Path.of("the table");
        }
    }

    static List<Line> of(Path file) throws IOException {
        UnreadableInputException.unlessReadable(file);
        List<String> typed;
        try {
            typed = Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new UnreadableInputException(file, "is not text in UTF-8");
        }
        return of(file, typed);
    }

    /** The same of lines that came another way; the file is what they are called by. */
    static List<Line> of(Path file, List<String> typed) {
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < typed.size(); i++) {
            String line = typed.get(i).strip();
            if (line.startsWith(BYTE_ORDER_MARK)) {
                line = line.substring(1);
            }
            if (!line.isEmpty() && !line.startsWith("#")) {
                lines.add(new Line(file, i + 1, List.of(line.split("\\s*,\\s*", -1))));
            }
        }
        return lines;
    }
}
