package ebblight.app.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonWriter;
import ebblight.engine.RequestException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class KitStoreTest {

    private static final String KIT =
            """
            {"schema":"kit/1",
             "cameras":[{"name":"Field body","sensorWidthMillimetres":36,"sensorHeightMillimetres":24,"lowestIso":64,
               "highestIso":6400,"baseIso":64,"timedLimitSeconds":32,"darkFrame":true,"opticalFinder":false,"inBag":true}],
             "lenses":[],
             "filters":[{"name":"<script>alert(1)</script>","takes":"nd1000","measuredStops":10.3,
               "measuredOn":"2027-01-03","cast":"slightly warm","inBag":true}]}""";

    @TempDir
    Path folder;

    @Test
    void aNewKitHasThreeFiltersInTheBag() throws IOException {
        assertThat(new KitStore(folder).read().getArray("filters")).hasSize(3);
    }

    @Test
    void whatIsWrittenIsReadAgainByALaterProgram() throws Exception {
        JsonObject kit = JsonParser.object().from(KIT);
        new KitStore(folder).write(kit);
        JsonObject read = new KitStore(folder).read();
        JsonObject filter = read.getArray("filters").getObject(0);
        assertThat(filter.getString("name")).isEqualTo("<script>alert(1)</script>");
        assertThat(filter.getDouble("measuredStops")).isEqualTo(10.3);
        assertThat(read.getArray("cameras").getObject(0).getBoolean("darkFrame"))
                .isTrue();
        assertThat(read.getArray("cameras").getObject(0).getBoolean("opticalFinder"))
                .isFalse();
        assertThat(JsonParser.object().from(JsonWriter.string(read))).isEqualTo(read);
    }

    @Test
    void aKitThatCannotBeIsRefusedWholeAndNamesTheField() throws Exception {
        KitStore store = new KitStore(folder);
        JsonObject kit = JsonParser.object().from(KIT);
        kit.getArray("filters").getObject(0).put("takes", "a lot");
        assertThatThrownBy(() -> store.write(kit))
                .isInstanceOf(RequestException.class)
                .hasMessageContaining("filters[0].takes");
        assertThat(store.read().getArray("filters")).hasSize(3);
    }

    @Test
    void anOlderFileIsCopiedAndBroughtUp() throws Exception {
        Path file = folder.resolve("kit.sqlite");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE cameras (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT"
                    + " NULL, sensorWidthMillimetres REAL, sensorHeightMillimetres REAL, lowestIso REAL, highestIso"
                    + " REAL, baseIso REAL, timedLimitSeconds REAL, darkFrame INTEGER, inBag INTEGER)");
            statement.execute("CREATE TABLE lenses (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT"
                    + " NULL, focalMillimetres REAL, widestFNumber REAL, narrowestFNumber REAL, sharpestFrom REAL,"
                    + " sharpestTo REAL, inBag INTEGER)");
            statement.execute("CREATE TABLE filters (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT"
                    + " NULL, takes TEXT NOT NULL, measuredStops REAL, measuredOn TEXT, inBag INTEGER)");
            statement.execute("INSERT INTO filters (position, name, takes, inBag) VALUES (0, 'kept', '6', 1)");
            statement.execute("PRAGMA user_version = 1");
        }
        JsonObject kit = new KitStore(folder).read();
        assertThat(kit.getArray("filters").getObject(0).getString("name")).isEqualTo("kept");
        Path copy = folder.resolve("kit-before-version-" + Migrations.newest() + ".sqlite");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy);
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("SELECT name FROM filters")) {
            assertThat(found.next()).isTrue();
            assertThat(found.getString(1)).isEqualTo("kept");
        }
    }

    @Test
    void aFileOfANewerProgramIsLeftAlone() throws Exception {
        new KitStore(folder);
        Path file = folder.resolve("kit.sqlite");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = 99");
        }
        assertThatThrownBy(() -> new KitStore(folder))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("newer");
        assertThat(Files.size(file)).isPositive();
    }
}
