package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Reads a typed table of high and low waters: {@code time,heightMetres,kind} with kind high or low. */
public final class TideTableFile {

    private static final String HEADING = "time,heightMetres,kind";

    private TideTableFile() {}

    /** Rows of time, height and kind as the engine reads them. */
    public static JsonArray read(Path file) throws IOException {
        return rows(file, TableLines.of(file));
    }

    /** The same of a text that was dropped or chosen on a page. */
    public static JsonArray read(String name, String text) throws IOException {
        Path file = TableLines.called(name);
        return rows(file, TableLines.of(file, text.lines().toList()));
    }

    private static JsonArray rows(Path file, List<TableLines.Line> lines) throws IOException {
        if (!lines.isEmpty() && !String.join(",", lines.get(0).fields()).equalsIgnoreCase(HEADING)) {
            throw lines.get(0).bad("must be the heading " + HEADING);
        }
        JsonArray rows = new JsonArray();
        for (TableLines.Line line : TableLines.underHeading(lines)) {
            rows.add(row(line));
        }
        if (rows.size() < 2) {
            throw new UnreadableInputException(
                    file, "holds fewer than two waters; write lines such as" + " 2027-01-10T16:30:00Z,3.4,high");
        }
        return rows;
    }

    private static JsonArray row(TableLines.Line line) throws IOException {
        List<String> fields = line.fields();
        if (fields.size() != 3) {
            throw line.bad("must be " + HEADING + ", had " + fields.size() + " fields");
        }
        double height;
        try {
            height = Double.parseDouble(fields.get(1));
        } catch (NumberFormatException e) {
            throw line.bad("heightMetres is no number: \"" + fields.get(1) + "\"");
        }
        if (!(Math.abs(height) <= 30)) {
            throw line.bad("heightMetres lies between -30 and 30, was " + height);
        }
        String kind = fields.get(2).toLowerCase(Locale.ROOT);
        if (!kind.equals("high") && !kind.equals("low")) {
            throw line.bad("kind must be high or low, was \"" + fields.get(2) + "\"");
        }
        JsonArray row = new JsonArray();
        row.add(fields.get(0));
        row.add(height);
        row.add(kind);
        return row;
    }
}
