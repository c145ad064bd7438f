package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.outing.Weather;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Reads a forecast: a heading of {@code time} and any of the columns of {@link Weather.Kind}, then rows in order of
 * time; an empty field is not known.
 */
public final class WeatherFile {

    private WeatherFile() {}

    /** Rows of the forecast as the engine reads them. */
    public static JsonArray read(Path file) throws IOException {
        return rows(file, TableLines.of(file));
    }

    /** The same of a text that was dropped or chosen on a page. */
    public static JsonArray read(String name, String text) throws IOException {
        Path file = TableLines.called(name);
        return rows(file, TableLines.of(file, text.lines().toList()));
    }

    private static JsonArray rows(Path file, List<TableLines.Line> lines) throws IOException {
        if (!lines.isEmpty()) {
            check(lines.get(0));
        }
        JsonArray rows = new JsonArray();
        for (TableLines.Line line : TableLines.underHeading(lines)) {
            rows.add(row(line, lines.get(0).fields()));
        }
        if (rows.isEmpty()) {
            throw new UnreadableInputException(
                    file,
                    "holds no row; write a heading such as time,cloudCover,windMetresPerSecond,swellMetres and"
                            + " rows such as 2027-01-10T12:00:00Z,0.5,6,1.2");
        }
        return rows;
    }

    private static void check(TableLines.Line heading) throws IOException {
        StringBuilder known = new StringBuilder("time");
        for (Weather.Kind kind : Weather.Kind.values()) {
            known.append(", ").append(kind.word());
        }
        for (String column : heading.fields()) {
            if (!(", " + known + ",").contains(", " + column + ",")) {
                throw heading.bad("names a column \"" + column + "\"; known are " + known);
            }
        }
        if (!heading.fields().contains("time") || heading.fields().size() < 2) {
            throw heading.bad("must be a heading of time and at least one of " + known);
        }
    }

    private static JsonObject row(TableLines.Line line, List<String> heading) throws IOException {
        List<String> fields = line.fields();
        if (fields.size() != heading.size()) {
            throw line.bad("has " + fields.size() + " fields, the heading " + heading.size());
        }
        JsonObject row = new JsonObject();
        for (int k = 0; k < fields.size(); k++) {
            if (heading.get(k).equals("time")) {
                row.put("time", fields.get(k));
            } else if (!fields.get(k).isEmpty()) {
                try {
                    row.put(heading.get(k), Double.parseDouble(fields.get(k)));
                } catch (NumberFormatException e) {
                    throw line.bad(heading.get(k) + " is no number: \"" + fields.get(k) + "\"");
                }
            }
        }
        return row;
    }
}
