package ebblight.app.kit;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;

/** How the database is opened. */
final class Database {

    private static final int BUSY_MILLISECONDS = 5000;

    private Database() {}

    static Connection open(Path file) throws SQLException {
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

    static IOException unusable(Path file, SQLException e) {
        return new IOException(
                file + ": the kit cannot be read or written (" + e.getMessage()
                        + "); if the file is damaged, move it away and import your last export",
                e);
    }
}
