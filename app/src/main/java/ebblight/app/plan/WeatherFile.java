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
final class WeatherFile {

    private WeatherFile() {}

    static JsonArray read(Path file) throws IOException {
        List<String> lines = TideTableFile.lines(file);
        JsonArray rows = new JsonArray();
        String[] heading = {};
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.startsWith("\uFEFF")) {
                line = line.substring(1);
            }
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String[] parts = line.split("\\s*,\\s*", -1);
            if (heading.length == 0) {
                heading = checked(file, i, parts);
            } else {
                rows.add(row(file, i, heading, parts));
            }
        }
        if (rows.isEmpty()) {
            throw new UnreadableInputException(
                    file,
                    "holds no row; write a heading such as time,cloudCover,windMetresPerSecond,swellMetres and"
                            + " rows such as 2027-01-10T12:00:00Z,0.5,6,1.2");
        }
        return rows;
    }

    private static String[] checked(Path file, int i, String[] heading) throws IOException {
        StringBuilder known = new StringBuilder("time");
        for (Weather.Kind kind : Weather.Kind.values()) {
            known.append(", ").append(kind.word());
        }
        for (String column : heading) {
            if (!(", " + known + ",").contains(", " + column + ",")) {
                throw TideTableFile.bad(file, i, "names a column \"" + column + "\"; known are " + known);
            }
        }
        if (!List.of(heading).contains("time") || heading.length < 2) {
            throw TideTableFile.bad(file, i, "must be a heading of time and at least one of " + known);
        }
        return heading;
    }

    private static JsonObject row(Path file, int i, String[] heading, String[] parts) throws IOException {
        if (parts.length != heading.length) {
            throw TideTableFile.bad(file, i, "has " + parts.length + " fields, the heading " + heading.length);
        }
        JsonObject row = new JsonObject();
        for (int k = 0; k < parts.length; k++) {
            if (heading[k].equals("time")) {
                row.put("time", parts[k]);
            } else if (!parts[k].isEmpty()) {
                try {
                    row.put(heading[k], Double.parseDouble(parts[k]));
                } catch (NumberFormatException e) {
                    throw TideTableFile.bad(file, i, heading[k] + " is no number: \"" + parts[k] + "\"");
                }
            }
        }
        return row;
    }
}
