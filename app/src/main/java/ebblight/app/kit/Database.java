package ebblight.app.kit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;

/** The database in the user's data folder: write-ahead log, one writer, a copy before every migration. */
public final class Database {

    private static final int BUSY_MILLISECONDS = 5000;

    private Database() {}

    /** The file of the database in a folder, its tables brought up to this version. */
    public static Path in(Path dataFolder) throws IOException {
        Path file = Files.createDirectories(dataFolder).resolve("kit.sqlite");
        try (Connection connection = open(file)) {
            Migrations.bringUp(connection, file);
        } catch (SQLException e) {
            throw unusable(file, e);
        }
        return file;
    }

    public static Connection open(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setBusyTimeout(BUSY_MILLISECONDS);
        // A change takes the right to write before it reads, so that of two programs the second sees what the first
        // did.
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        config.enforceForeignKeys(true);
        return config.createConnection("jdbc:sqlite:" + file);
    }

    public static IOException unusable(Path file, SQLException e) {
        return new IOException(
                file + ": kit and memory cannot be read or written (" + e.getMessage()
                        + "); if the file is damaged, move it away and import your last export",
                e);
    }
}
