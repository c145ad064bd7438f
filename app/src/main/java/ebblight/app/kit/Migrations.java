package ebblight.app.kit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** The steps from an empty file to the tables of this version; the file remembers how many were taken. */
final class Migrations {

    private static final List<List<String>> STEPS = List.of(
            List.of(
                    "CREATE TABLE cameras (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT NULL,"
                            + " sensorWidthMillimetres REAL, sensorHeightMillimetres REAL, lowestIso REAL,"
                            + " highestIso REAL, baseIso REAL, timedLimitSeconds REAL, darkFrame INTEGER, inBag INTEGER)",
                    "CREATE TABLE lenses (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT NULL,"
                            + " focalMillimetres REAL, widestFNumber REAL, narrowestFNumber REAL, sharpestFrom REAL,"
                            + " sharpestTo REAL, inBag INTEGER)",
                    "CREATE TABLE filters (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT NULL,"
                            + " takes TEXT NOT NULL, measuredStops REAL, measuredOn TEXT, inBag INTEGER)",
                    "INSERT INTO filters (position, name, takes, inBag) VALUES (0, '3-stop', '3', 1),"
                            + " (1, '6-stop', '6', 1), (2, '10-stop', '10', 1)"),
            List.of(
                    "ALTER TABLE cameras ADD COLUMN opticalFinder INTEGER",
                    "ALTER TABLE filters ADD COLUMN \"cast\" TEXT"),
            MemoryStep.TABLES);

    private Migrations() {}

    /** Number of steps of this version. */
    static int newest() {
        return STEPS.size();
    }

    static void bringUp(Connection connection, Path file) throws SQLException, IOException {
        int at = version(connection);
        if (at > STEPS.size()) {
            throw new IOException(file + ": was written by a newer Ebblight; use that one, or import its export here");
        }
        if (at == STEPS.size()) {
            return;
        }
        if (at > 0) {
            try (Statement statement = connection.createStatement()) {
                statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
            }
            Files.copy(
                    file,
                    file.resolveSibling("kit-before-version-" + STEPS.size() + ".sqlite"),
                    StandardCopyOption.REPLACE_EXISTING);
        }
        connection.setAutoCommit(false);
        try (Statement statement = connection.createStatement()) {
            for (int k = version(connection); k < STEPS.size(); k++) { // another program may have taken some since
                for (String sql : STEPS.get(k)) {
                    statement.execute(sql);
                }
            }
            statement.execute("PRAGMA user_version = " + STEPS.size());
        }
        connection.commit();
        connection.setAutoCommit(true);
    }

    static int version(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("PRAGMA user_version")) {
            return found.next() ? found.getInt(1) : 0;
        }
    }
}
