package ebblight.app.kit;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Cameras, lenses and filters in the database of the user's data folder. */
public final class KitStore {

    /** Columns of each list, in the order of the tables; all but {@code id}. */
    private static final Map<String, List<String>> COLUMNS = Map.of(
            "cameras",
            List.of(
                    "name",
                    "sensorWidthMillimetres",
                    "sensorHeightMillimetres",
                    "lowestIso",
                    "highestIso",
                    "baseIso",
                    "timedLimitSeconds",
                    "darkFrame",
                    "opticalFinder",
                    "inBag"),
            "lenses",
            List.of(
                    "name",
                    "focalMillimetres",
                    "widestFNumber",
                    "narrowestFNumber",
                    "sharpestFrom",
                    "sharpestTo",
                    "inBag"),
            "filters",
            List.of("name", "takes", "measuredStops", "measuredOn", "cast", "inBag"));

    private static final List<String> LISTS = List.of("cameras", "lenses", "filters");

    private final Path file;

    public KitStore(Path dataFolder) throws IOException {
        file = Database.in(dataFolder);
    }

    /** The kit as {@code kit/1}. */
    public synchronized JsonObject read() throws IOException {
        try (Connection connection = Database.open(file)) {
            JsonObject kit = new JsonObject();
            kit.put("schema", "kit/1");
            for (String list : LISTS) {
                kit.put(list, rows(connection, list));
            }
            return kit;
        } catch (SQLException e) {
            throw Database.unusable(file, e);
        }
    }

    private static JsonArray rows(Connection connection, String list) throws SQLException {
        JsonArray rows = new JsonArray();
        List<String> columns = columns(list);
        try (PreparedStatement statement = connection.prepareStatement(
                        "SELECT " + quoted(columns) + " FROM " + list + " ORDER BY position, id");
                ResultSet found = statement.executeQuery()) {
            while (found.next()) {
                JsonObject row = new JsonObject();
                for (String column : columns) {
                    row.put(column, KitFields.fromDatabase(column, found.getObject(column)));
                }
                rows.add(row);
            }
        }
        return rows;
    }

    /** Some names are words of the language ({@code cast}). */
    private static String quoted(List<String> columns) {
        return "\"" + String.join("\", \"", columns) + "\"";
    }

    private static List<String> columns(String list) {
        List<String> columns = COLUMNS.get(list);
        if (columns == null) {
            throw new IllegalArgumentException("the kit holds no " + list);
        }
        return columns;
    }

    /** Refuses a {@code kit/1} that could not be worked with, naming the field. */
    public static void check(JsonObject kit) {
        KitFields.check(kit, COLUMNS);
    }

    /** Replaces the kit by {@code kit/1}, all of it or nothing. */
    public synchronized void write(JsonObject kit) throws IOException {
        check(kit);
        try (Connection connection = Database.open(file)) {
            connection.setAutoCommit(false);
            for (String list : LISTS) {
                replace(connection, list, kit.getArray(list, new JsonArray()));
            }
            connection.commit();
        } catch (SQLException e) {
            throw Database.unusable(file, e);
        }
    }

    private static void replace(Connection connection, String list, JsonArray rows) throws SQLException {
        try (PreparedStatement clear = connection.prepareStatement("DELETE FROM " + list)) {
            clear.executeUpdate();
        }
        List<String> columns = columns(list);
        String marks = "?" + ", ?".repeat(columns.size());
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO " + list + " (position, " + quoted(columns) + ") VALUES (" + marks + ")")) {
            for (int i = 0; i < rows.size(); i++) {
                JsonObject row = rows.getObject(i);
                insert.setInt(1, i);
                for (int k = 0; k < columns.size(); k++) {
                    @Nullable Object value = KitFields.toDatabase(columns.get(k), row.get(columns.get(k)));
                    insert.setObject(k + 2, value);
                }
                insert.executeUpdate();
            }
        }
    }
}
