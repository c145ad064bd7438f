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

    @Test
    void allThatThePageSetsCanBeTyped() throws Exception {
        Path outing = folder.resolve("typed");
        Path air = Files.writeString(
                folder.resolve("air.csv"), "time,cloudCover,swellMetres\n2027-01-10T12:00Z,0.5,1.2\n");
        Said said = Said.by(("outing new " + outing + " --at 48.65,-2.03 --zone Europe/Paris --station nearest"
                        + " --view-azimuth 290 --focal 35 --hour sunAltitude=-6,5 --hour sunInFrame=no"
                        + " --hour tideDirection=falling --hour twilight=civil,nautical --hour hours=05:00,22:00"
                        + " --from 2027-01-10 --to 2027-01-20 --min-minutes 25 --time 30s,2m --way-back 4.2"
                        + " --swell 1.5@9 --cloud thin --skyline 2 --weather " + air)
                .split(" "));
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject document = written(outing);
        JsonObject hour = document.getArray("views").getObject(0).getObject("hour");
        assertThat(hour.keySet())
                .containsExactlyInAnyOrder("sunAltitude", "sunInFrame", "tideDirection", "twilight", "hours");
        assertThat(hour.getBoolean("sunInFrame")).isFalse();
        assertThat(hour.isBoolean("sunInFrame")).isTrue();
        assertThat(hour.getArray("sunAltitude").getDouble(0)).isEqualTo(-6);
        JsonObject plan = document.getObject("plan");
        assertThat(plan.getString("from")).isEqualTo("2027-01-10");
        assertThat(plan.getInt("minMinutes")).isEqualTo(25);
        assertThat(plan.getObject("exposure").getString("to")).isEqualTo("2m");
        assertThat(plan.getObject("guard").getDouble("swellSeconds")).isEqualTo(9);
        // rows, not the name of a file that stays behind
        assertThat(plan.getArray("weather").getObject(0).getDouble("swellMetres"))
                .isEqualTo(1.2);
        assertThat(document.getObject("place").getInt("skylineDegrees")).isEqualTo(2);
    }

    @Test
    void aTableIsTakenAlongWithItsRows() throws Exception {
        Files.writeString(
                folder.resolve("waters.csv"),
                "time,heightMetres,kind\n2027-01-10T03:00Z,5,high\n2027-01-10T09:00Z,1,low\n");
        Path wishes = Files.writeString(
                folder.resolve("w.json"),
                """
                {"schema":"wishes/1","at":"48.65,-2.03","from":"2027-01-10","to":"2027-01-11","table":"waters.csv",
                 "tideMetres":[1,3],"guess":{"windMetresPerSecond":6}}
                """);
        Path outing = folder.resolve("far/away");
        assertThat(Said.by("outing", "new", outing.toString(), "--wishes", wishes.toString())
                        .code())
                .isZero();
        JsonObject document = written(outing);
        assertThat(document.getObject("plan").getArray("table").getArray(1).getString(2))
                .isEqualTo("low");
        assertThat(document.getObject("plan").getObject("guess")).isNotNull();
        assertThat(document.getArray("views").getObject(0).getObject("hour").keySet())
                .containsExactly("tideMetres");
    }

    @Test
    void aWishThatCannotBeUsedIsSaidBeforeAnythingIsWritten() throws Exception {
        Path outing = folder.resolve("shore");
        String start = "outing new " + outing + " --at 48.65,-2.03 ";
        for (String[] bad : new String[][] {
            {"--hour sunAltitude=5,-6", "sunAltitude"},
            {"--hour sunAltitud=5,6", "sunAltitud"},
            {"--hour sunAltitude", "--hour"},
            {"--hour tideMetres=1,2", "needs a tide"},
            {"--hour sunInFrame=no", "needs a view"},
            {"--hour days=sat,someday", "someday"},
            {"--from 2027-02-30 --to 2027-03-01", "2027-02-30"},
            {"--from 2027-02-03", "--to"},
            {"--from 2027-02-03 --to 2027-02-03", "after from"},
            {"--time soon", "soon"},
            {"--way-back 3 --station nearest --swell high", "--swell"},
            {"--margin 1", "--way-back"},
            {"--way-back 3", "needs a tide"},
            {"--cloud pink", "pink"},
            {"--min-minutes 0", "minMinutes"}
        }) {
            Said.by((start + bad[0]).split(" ")).refuses(2, bad[1]);
        }
        assertThat(Files.exists(outing)).isFalse();
    }

    /** An outing has several views, each with its own wishes; when answers for each of them. */
    @Test
    void severalViewsArePlannedAndSearchedFromTheCommandLine() throws Exception {
        Path outing = folder.resolve("two");
        assertThat(Said.by(("outing new " + outing + " --at 0,0 --zone UTC --view-azimuth 90 --hour sunInFrame=yes"
                                        + " --from 2027-03-20 --to 2027-03-22 --min-minutes 10")
                                .split(" "))
                        .code())
                .isZero();
        Said added = Said.by(
                "outing",
                "view",
                outing.toString(),
                "--name",
                "west",
                "--view-azimuth",
                "270",
                "--focal",
                "50",
                "--json");
        assertThat(added.code()).as(added.err()).isZero();
        assertThat(JsonParser.object().from(added.out()).getString("view")).isEqualTo("view-2");
        JsonObject west = written(outing).getArray("views").getObject(1);
        assertThat(west.getObject("hour").getBoolean("sunInFrame")).isTrue();
        assertThat(written(outing).getInt("revision")).isEqualTo(2);
        // on the equator at the equinox the sun stands due east in the morning, due west in the evening (common
        // knowledge)
        for (String[] view : new String[][] {{"view-1", "T0[6-9]"}, {"view-2", "T1[5-8]"}}) {
            Said said = Said.by("when", outing.toString(), "--view", view[0], "--json");
            assertThat(said.code()).as(said.err()).isZero();
            JsonObject answer = JsonParser.object().from(said.out());
            assertThat(answer.getArray("windows").getObject(0).getString("start"))
                    .containsPattern(view[1]);
            assertThat(answer.getArray("views")).hasSize(2);
        }
        assertThat(Said.by("when", outing.toString()).out())
                .contains("for view-1", "also planned, --view view-2, west");
        Said.by("when", outing.toString(), "--view", "view-9").refuses(3, "outing.json", "view-9", "view-1, view-2");
        Said.by("outing", "view", outing.toString()).refuses(2, "--view-azimuth");
        Said.by("outing", "view", outing.toString(), "--hour", "sunAltitude=5,-6")
                .refuses(2, "sunAltitude");
        Said.by("outing", "view", folder.toString(), "--view-azimuth", "5").refuses(3, "outing.json", "outing new");
        assertThat(written(outing).getInt("revision")).isEqualTo(2);
    }
}
