package ebblight.app.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonWriter;
import ebblight.app.kit.KitStore;
import ebblight.engine.RequestException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@SuppressWarnings("NullAway") // JUnit fills in the folder
class MemoryStoreTest {

    private static final String MEMORY =
            """
            {"schema":"memory/1",
             "calibrations":[{"filter":"10-stop","measuredOn":"2027-01-03","takes":"10","stops":10.3,"low":10.25,
               "high":10.35,"red":1.02,"blue":0.9,"pairs":2}],
             "outings":[{"folder":"/coast/one","name":"Cove","zone":"Atlantic/Reykjavik","latitude":63.4,"longitude":-19.05,
               "measurements":[{"input":"clip.mp4","mode":"clip","frames":100,"seconds":10,"framesPerSecond":10,
                 "windMetresPerSecond":6.5,"parts":[{"part":"flowing-1","number":0,"kind":"flowing","water":"wind waves",
                   "texture":0.38,"standing":0.14,"resolved":false,
                   "predictions":[{"seconds":8,"left":0.15,"low":0.142,"high":0.174}]}]}],
               "frames":[{"file":"A_1.jpg","exposureSeconds":8,"rating":5}],
               "entries":[{"openedAt":"2027-01-03T10:00:00Z","openSeconds":8,"verdict":"keep"}],
               "results":[{"file":"made/sea.tif","command":"stack","seconds":8,"frames":16,
                 "outcomes":[{"part":"flowing-1","kind":"flowing","predicted":0.15,"cameOut":0.148}]}]}]}""";

    @TempDir
    Path folder;

    private static JsonObject memory() throws Exception {
        return JsonParser.object().from(MEMORY);
    }

    private static JsonObject outing(JsonObject memory) {
        return memory.getArray("outings").getObject(0);
    }

    @Test
    void whatIsRememberedIsReadAgain() throws Exception {
        new MemoryStore(folder).remember(memory());
        JsonObject outing = outing(new MemoryStore(folder).read());
        JsonObject part =
                outing.getArray("measurements").getObject(0).getArray("parts").getObject(0);
        assertThat(part.getBoolean("resolved", true)).isFalse();
        assertThat(part.getArray("predictions").getObject(0).getDouble("high")).isEqualTo(0.174);
        assertThat(outing.getArray("results")
                        .getObject(0)
                        .getArray("outcomes")
                        .getObject(0)
                        .getDouble("cameOut"))
                .isEqualTo(0.148);
    }

    @Test
    void anExportBroughtInToAnEmptyFolderIsTheSame() throws Exception {
        MemoryStore store = new MemoryStore(folder);
        store.remember(memory());
        String exported = JsonWriter.string(store.read());
        MemoryStore other = new MemoryStore(folder.resolve("other"));
        other.remember(JsonParser.object().from(exported));
        assertThat(JsonWriter.string(other.read())).isEqualTo(exported);
        other.remember(JsonParser.object().from(exported));
        assertThat(JsonWriter.string(other.read())).isEqualTo(exported);
    }

    @Test
    void whatComesLaterAddsToARowAndLeavesWhatItDoesNotSay() throws Exception {
        MemoryStore store = new MemoryStore(folder);
        store.remember(memory());
        store.remember(
                JsonParser.object()
                        .from(
                                """
                        {"schema":"memory/1","outings":[{"folder":"/coast/one",
                          "frames":[{"file":"A_1.jpg","role":"filtered"}],
                          "results":[{"file":"made/sea.tif","outcomes":[]}]}]}"""));
        JsonObject outing = outing(store.read());
        assertThat(outing.getString("name")).isEqualTo("Cove");
        JsonObject frame = outing.getArray("frames").getObject(0);
        assertThat(frame.getString("role")).isEqualTo("filtered");
        assertThat(frame.getInt("rating")).isEqualTo(5);
        assertThat(outing.getArray("results").getObject(0).getArray("outcomes")).isEmpty();
        assertThat(outing.getArray("measurements")).hasSize(1);
    }

    @Test
    void aRowThatCannotBeIsNamedAndNothingIsTaken() throws Exception {
        MemoryStore store = new MemoryStore(folder);
        JsonObject wrong = memory();
        outing(wrong).getArray("frames").getObject(0).put("exposureSeconds", "long");
        assertThatThrownBy(() -> store.remember(wrong))
                .isInstanceOf(RequestException.class)
                .hasMessageContaining("outings[0].frames[0]");
        assertThat(store.read().getArray("outings")).isEmpty();
        assertThat(store.read().getArray("calibrations")).isEmpty();
    }

    /** Kits as the first two versions of the program left them. */
    @Test
    void kitsOfBothOlderVersionsAreCopiedAndBroughtUp() throws Exception {
        Map<Integer, String> more = Map.of(
                1,
                "",
                2,
                "ALTER TABLE cameras ADD COLUMN opticalFinder INTEGER;"
                        + "ALTER TABLE filters ADD COLUMN \"cast\" TEXT;UPDATE filters SET \"cast\" = 'warm'");
        for (int version : more.keySet()) {
            Path old = Files.createDirectories(folder.resolve("version-" + version));
            try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + old.resolve("kit.sqlite"));
                    Statement statement = connection.createStatement()) {
                statement.executeUpdate("CREATE TABLE cameras (id INTEGER PRIMARY KEY, position INTEGER NOT NULL,"
                        + " name TEXT NOT NULL, sensorWidthMillimetres REAL, sensorHeightMillimetres REAL,"
                        + " lowestIso REAL, highestIso REAL, baseIso REAL, timedLimitSeconds REAL, darkFrame INTEGER,"
                        + " inBag INTEGER);"
                        + "CREATE TABLE lenses (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT NULL,"
                        + " focalMillimetres REAL, widestFNumber REAL, narrowestFNumber REAL, sharpestFrom REAL,"
                        + " sharpestTo REAL, inBag INTEGER);"
                        + "CREATE TABLE filters (id INTEGER PRIMARY KEY, position INTEGER NOT NULL, name TEXT NOT NULL,"
                        + " takes TEXT NOT NULL, measuredStops REAL, measuredOn TEXT, inBag INTEGER);"
                        + "INSERT INTO filters (position, name, takes, measuredStops, inBag)"
                        + " VALUES (0, 'kept', '6', 6.2, 1);"
                        + more.get(version) + ";PRAGMA user_version = " + version);
            }
            MemoryStore store = new MemoryStore(old);
            store.remember(memory());
            JsonObject filter = new KitStore(old).read().getArray("filters").getObject(0);
            assertThat(filter.getDouble("measuredStops")).isEqualTo(6.2);
            assertThat(filter.getString("cast")).isEqualTo(version == 1 ? null : "warm");
            assertThat(store.read().getArray("outings")).hasSize(1);
            Path copy = old.resolve("kit-before-version-3.sqlite");
            try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy);
                    Statement statement = connection.createStatement();
                    ResultSet found = statement.executeQuery("SELECT name FROM filters")) {
                assertThat(found.next()).isTrue();
                assertThat(found.getString(1)).isEqualTo("kept");
            }
        }
    }
}
