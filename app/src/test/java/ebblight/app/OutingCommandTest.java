package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code outing new}: a folder that can be opened. */
class OutingCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private JsonObject written(Path outing) throws Exception {
        return JsonParser.object().from(Files.readString(outing.resolve("outing.json")));
    }

    @Test
    void placeViewAndWishesAreKeptApart() throws Exception {
        Path wishes = Files.writeString(
                folder.resolve("w.json"),
                """
                {"schema":"wishes/1","at":"48.65,-2.03","zone":"Europe/Paris","from":"2027-01-01","to":"2027-02-01",
                 "station":"nearest","minMinutes":20,"sunAltitude":[-6,5],"tideDirection":"falling",
                 "view":{"azimuth":270,"focalMillimetres":24}}
                """);
        Path outing = folder.resolve("new/shore");
        Said said = Said.by(
                "outing", "new", outing.toString(), "--wishes", wishes.toString(), "--name", "The shore", "--json");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject document = written(outing);
        assertThat(document.getString("schema")).isEqualTo("outing/1");
        assertThat(document.getInt("revision")).isEqualTo(1);
        assertThat(document.getString("zone")).isEqualTo("Europe/Paris");
        assertThat(document.getObject("place").getString("name")).isEqualTo("The shore");
        assertThat(document.getObject("place").getString("station")).isEqualTo("nearest");
        assertThat(document.getObject("plan").getInt("minMinutes")).isEqualTo(20);
        JsonObject view = document.getArray("views").getObject(0);
        assertThat(view.getInt("azimuth")).isEqualTo(270);
        assertThat(view.getObject("hour").keySet()).containsExactlyInAnyOrder("sunAltitude", "tideDirection");
        assertThat(JsonParser.object().from(said.out()).getObject("outing").getInt("revision"))
                .isEqualTo(1);
    }

    @Test
    void anOutingThatIsThereIsLeftAsItIs() throws Exception {
        Path outing = folder.resolve("shore");
        assertThat(Said.by("outing", "new", outing.toString(), "--at", "63.4,-19.05")
                        .code())
                .isZero();
        String before = Files.readString(outing.resolve("outing.json"));
        Said.by("outing", "new", outing.toString(), "--at", "1,2").refuses(3, "outing.json", "already");
        assertThat(Files.readString(outing.resolve("outing.json"))).isEqualTo(before);
    }

    @Test
    void whatCannotBeUsedLeavesNothingBehind() throws Exception {
        Path outing = folder.resolve("shore");
        Said.by("outing", "new", outing.toString(), "--at", "95,0").refuses(2, "--at", "95");
        Said.by("outing", "new", outing.toString(), "--zone", "Mars/Base").refuses(2, "--zone", "Mars/Base");
        Said.by("outing", "new", outing.toString(), "--station", "no such port").refuses(2, "--station");
        Said.by("outing").refuses(2, "outing new");
        assertThat(Files.exists(outing)).isFalse();
        Path file = Files.writeString(folder.resolve("file"), "x");
        Said.by("outing", "new", file.toString(), "--at", "1,2").refuses(3, "file");
    }
}
