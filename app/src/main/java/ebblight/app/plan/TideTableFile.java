package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Reads a typed table of high and low waters: {@code time,heightMetres,kind} with kind high or low. */
public final class TideTableFile {

    private static final String HEADING = "time,heightMetres,kind";

    private TideTableFile() {}

    /** Rows of time, height and kind as the engine reads them. */
    public static JsonArray read(Path file) throws IOException {
        List<String> lines = lines(file);
        JsonArray rows = new JsonArray();
        boolean heading = false;
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (i == 0 && line.startsWith("\uFEFF")) {
                line = line.substring(1);
            }
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (!heading) {
                if (!line.replace(" ", "").equalsIgnoreCase(HEADING)) {
                    throw bad(file, i, "must be the heading " + HEADING);
                }
                heading = true;
                continue;
            }
            rows.add(row(file, i, line));
        }
        if (rows.size() < 2) {
            throw new UnreadableInputException(
                    file, "holds fewer than two waters; write lines such as" + " 2027-01-10T16:30:00Z,3.4,high");
        }
        return rows;
    }

    private static JsonArray row(Path file, int i, String line) throws IOException {
        String[] parts = line.split(",", -1);
        if (parts.length != 3) {
            throw bad(file, i, "must be " + HEADING + ", had " + parts.length + " fields");
        }
        double height;
        try {
            height = Double.parseDouble(parts[1].strip());
        } catch (NumberFormatException e) {
            throw bad(file, i, "heightMetres is no number: \"" + parts[1].strip() + "\"");
        }
        if (!(Math.abs(height) <= 30)) {
            throw bad(file, i, "heightMetres lies between -30 and 30, was " + height);
        }
        String kind = parts[2].strip().toLowerCase(Locale.ROOT);
        if (!kind.equals("high") && !kind.equals("low")) {
            throw bad(file, i, "kind must be high or low, was \"" + parts[2].strip() + "\"");
        }
        JsonArray row = new JsonArray();
        row.add(parts[0].strip());
        row.add(height);
        row.add(kind);
        return row;
    }

    static List<String> lines(Path file) throws IOException {
        if (!Files.isReadable(file)) {
            throw new UnreadableInputException(file, Files.exists(file) ? "may not be read" : "does not exist");
        }
        try {
            return Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new UnreadableInputException(file, "is not text in UTF-8");
        }
    }

    static IOException bad(Path file, int index, String problem) {
        return new UnreadableInputException(file, "line " + (index + 1) + " " + problem);
    }
}
