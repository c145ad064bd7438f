package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.kit.Database;
import ebblight.engine.RequestException;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What is remembered, in the database beside the kit. Everything goes in and comes out as {@code memory/1}. */
public final class MemoryStore {

    static final String SCHEMA = "memory/1";

    private final Path file;

    /** The memory in the user's data folder; its tables are brought up to this version. */
    public MemoryStore(Path dataFolder) throws IOException {
        file = Database.in(dataFolder);
    }

    /** All of it. */
    public synchronized JsonObject read() throws IOException {
        try (Connection connection = Database.open(file)) {
            JsonObject memory = new JsonObject();
            memory.put("schema", SCHEMA);
            for (MemoryTable table : MemoryTable.TOP) {
                memory.put(table.name(), rows(connection, table, 0));
            }
            return memory;
        } catch (SQLException e) {
            throw Database.unusable(file, e);
        }
    }

    /**
     * Adds {@code memory/1} to what is known, all of it or nothing. Rows of the same key become one; a field that is left
     * out stays as it was; parts, predictions and outcomes take the place of those that were there.
     */
    public synchronized void remember(JsonObject memory) throws IOException {
        if (!SCHEMA.equals(memory.getString("schema"))) {
            throw new RequestException("schema", "must be " + SCHEMA);
        }
        try (Connection connection = Database.open(file)) {
            connection.setAutoCommit(false);
            for (MemoryTable table : MemoryTable.TOP) {
                put(connection, table, 0, memory, "");
            }
            connection.commit();
        } catch (SQLException e) {
            throw Database.unusable(file, e);
        }
    }

    private static JsonArray rows(Connection connection, MemoryTable table, long parent) throws SQLException {
        JsonArray rows = new JsonArray();
        String of = parent == 0 ? "" : " WHERE parent = " + parent;
        List<Long> ids = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement("SELECT id, " + quoted(table.fields()) + " FROM "
                        + table.name() + of + " ORDER BY " + quoted(table.key()));
                ResultSet found = statement.executeQuery()) {
            while (found.next()) {
                JsonObject row = new JsonObject();
                for (String field : table.fields()) {
                    row.put(field, fromDatabase(field, found.getObject(field)));
                }
                rows.add(row);
                ids.add(found.getLong("id"));
            }
        }
        for (int k = 0; k < ids.size(); k++) {
            for (MemoryTable below : table.below()) {
                rows.getObject(k).put(below.name(), rows(connection, below, ids.get(k)));
            }
        }
        return rows;
    }

    private static void put(Connection connection, MemoryTable table, long parent, JsonObject in, String where)
            throws SQLException {
        if (!in.has(table.name())) {
            return;
        }
        String list = where + table.name();
        if (!(in.get(table.name()) instanceof JsonArray rows)) {
            throw new RequestException(list, "must be a list");
        }
        if (table.whole()) {
            try (PreparedStatement clear =
                    connection.prepareStatement("DELETE FROM " + table.name() + " WHERE parent = " + parent)) {
                clear.executeUpdate();
            }
        }
        for (int k = 0; k < rows.size(); k++) {
            String at = list + "[" + k + "]";
            if (!(rows.get(k) instanceof JsonObject row)) {
                throw new RequestException(at, "must be an object");
            }
            long id = put(
                    connection,
                    table,
                    parent,
                    row,
                    table.fields().stream().filter(row::has).toList(),
                    at);
            for (MemoryTable below : table.below()) {
                put(connection, below, id, row, at + ".");
            }
        }
    }

    private static long put(
            Connection connection, MemoryTable table, long parent, JsonObject row, List<String> said, String at)
            throws SQLException {
        List<String> columns = new ArrayList<>(said);
        List<String> key = new ArrayList<>(table.key());
        if (parent != 0) {
            columns.add(0, "parent");
            key.add(0, "parent");
        }
        StringBuilder sql = new StringBuilder("INSERT INTO " + table.name() + " (" + quoted(columns) + ") VALUES (?")
                .append(", ?".repeat(columns.size() - 1))
                .append(") ON CONFLICT (" + quoted(key) + ") DO UPDATE SET ");
        String comma = "";
        for (String column : said) {
            sql.append(comma).append('"' + column + "\" = excluded.\"" + column + '"');
            comma = ", ";
        }
        try (PreparedStatement insert = connection.prepareStatement(sql + " RETURNING id")) {
            for (int k = 0; k < columns.size(); k++) {
                String column = columns.get(k);
                insert.setObject(k + 1, column.equals("parent") ? parent : toDatabase(column, row.get(column)));
            }
            try (ResultSet id = insert.executeQuery()) {
                id.next();
                return id.getLong(1);
            }
        } catch (SQLiteException e) {
            SQLiteErrorCode code = e.getResultCode();
            if (code.name().startsWith("SQLITE_CONSTRAINT")) {
                throw new RequestException(at, "cannot be kept: " + e.getMessage());
            }
            throw e;
        }
    }

    private static @Nullable Object fromDatabase(String field, @Nullable Object value) {
        return MemoryTable.FLAGS.contains(field) && value instanceof Number number ? number.intValue() != 0 : value;
    }

    private static @Nullable Object toDatabase(String field, @Nullable Object value) {
        if (value instanceof Boolean flag && MemoryTable.FLAGS.contains(field)) {
            return flag ? 1 : 0;
        }
        return value instanceof JsonObject || value instanceof JsonArray ? String.valueOf(value) : value;
    }

    /** Some names are words of the language ({@code left}). */
    private static String quoted(List<String> columns) {
        return "\"" + String.join("\", \"", columns) + "\"";
    }
}
