package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code when}, from a file of wishes to windows. */
class WhenCommandTest {

    private static final String WISHES =
            """
            {"schema":"wishes/1","at":"48.65,-2.03","zone":"Europe/Paris","from":"2027-01-01","to":"2027-02-01",
             "station":"nearest","minMinutes":20,"sunAltitude":[-6,5],"tideMetres":[1,7],"tideDirection":"falling"}
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private String file(String wishes) throws Exception {
        return Files.writeString(folder.resolve("w.json"), wishes).toString();
    }

    private static JsonObject document(Said said) throws Exception {
        return JsonParser.object().from(said.out());
    }

    @Test
    void aMonthAtAPortHasWindowsWithReasons() throws Exception {
        Said said = Said.by("when", file(WISHES), "--json", "--time", "2m", "--filters", "3,6,10");
        assertThat(said.code()).isZero();
        JsonObject answer = document(said);
        assertThat(answer.getString("schema")).isEqualTo("when/1");
        assertThat(answer.getArray("windows")).isNotEmpty();
        for (JsonObject window : Asked.rows(answer.getArray("windows"))) {
            assertThat(window.getLong("minutes")).isGreaterThanOrEqualTo(20);
            assertThat(window.getArray("why").getString(0)).isEqualTo("falling water");
            assertThat(window.getLong("frames")).isPositive();
        }
        assertThat(answer.getObject("packing").getArray("filters")).isNotEmpty();
        assertThat(answer.getArray("cautions").toString()).contains("Not for navigation");
    }

    @Test
    void thePersonIsToldTheSame() throws Exception {
        Said said = Said.by("when", file(WISHES), "--time", "2m", "--filters", "3,6,10");
        assertThat(said.code()).isZero();
        assertThat(said.out())
                .contains("Saint Malo", "falling water", "at the tripod by", "frames fit", "pack", "turn your back");
    }

    @Test
    void aWishThatNeverHoldsHasNoAnswer() throws Exception {
        Said said = Said.by("when", file(WISHES.replace("[-6,5]", "[60,80]")), "--json");
        assertThat(said.code()).isEqualTo(4);
        assertThat(document(said).getObject("conflict").getString("wish")).isEqualTo("sunAltitude");
        assertThat(Said.by("when", file(WISHES.replace("[-6,5]", "[60,80]"))).out())
                .contains("sunAltitude fails at 100 %");
    }

    @Test
    void theDayNamedLastIsNoLongerSearched() throws Exception {
        String day =
                "{\"schema\":\"wishes/1\",\"at\":\"48.65,-2.03\",\"zone\":\"Europe/Paris\",\"from\":\"2027-01-01\","
                        + "\"to\":\"2027-01-02\",\"hours\":[\"00:00\",\"24:00\"]}";
        JsonObject window = document(Said.by("when", file(day), "--json"))
                .getArray("windows")
                .getObject(0);
        assertThat(window.getString("start")).isEqualTo("2026-12-31T23:00:00Z");
        assertThat(window.getString("end")).isEqualTo("2027-01-01T22:59:00Z");
    }

    @Test
    void aForecastIsReadFromAFileBesideTheWishes() throws Exception {
        Files.writeString(
                folder.resolve("air.csv"),
                """
                # typed from the harbour office
                time,windMetresPerSecond,swellMetres
                2027-01-01T00:00Z,0,
                2027-01-01T12:00Z,10,1
                """);
        String day = "{\"schema\":\"wishes/1\",\"at\":\"48.65,-2.03\",\"zone\":\"UTC\",\"from\":\"2027-01-01\","
                + "\"to\":\"2027-01-02\",\"hours\":[\"00:00\",\"12:00\"],\"windMetresPerSecond\":[0,5],"
                + "\"weather\":\"air.csv\"}";
        JsonObject answer = document(Said.by("when", file(day), "--json"));
        // half of ten metres a second is reached after half of twelve hours
        assertThat(answer.getArray("windows").getObject(0).getString("end")).isEqualTo("2027-01-01T06:00:00Z");
        Files.writeString(folder.resolve("air.csv"), "time,wind\n2027-01-01T00:00Z,3\n");
        Said.by("when", file(day)).refuses(3, "air.csv", "line 1", "\"wind\"", "windMetresPerSecond");
        Files.writeString(folder.resolve("air.csv"), "time,cloudCover\n2027-01-01T00:00Z,much\n");
        Said.by("when", file(day)).refuses(3, "air.csv", "line 2", "cloudCover is no number");
    }

    @Test
    void whatCannotBeUsedIsNamed() throws Exception {
        Said.by("when", folder.resolve("gone.json").toString()).refuses(3, "gone.json", "does not exist");
        Said.by("when", file("no json")).refuses(3, "w.json", "not a JSON object");
        Said.by("when", file("{}")).refuses(3, "w.json", "schema", "wishes/1");
        Said.by("when", file("{\"schema\":\"wishes/1\"}")).refuses(3, "w.json", "at:", "latitude,longitude");
        Said.by("when", file(WISHES.replace("48.65", "95"))).refuses(3, "w.json", "at:", "95");
        Said.by("when", file(WISHES.replace("2027-02-01", "2027-02-30"))).refuses(3, "w.json", "to:", "2027-02-30");
        Said.by("when", file(WISHES.replace("2027-02-01", "2027-01-01"))).refuses(3, "w.json", "to:", "after from");
        Said.by("when", file(WISHES.replace("Europe/Paris", "Europe/Nowhere"))).refuses(3, "zone:", "Europe/Nowhere");
        Said.by("when", file(WISHES.replace("nearest", "no such port"))).refuses(3, "station:", "no such port");
        Said.by("when", file(WISHES), "--time", "long", "--filters", "6").refuses(2, "--time", "long");
        Said.by("when", file(WISHES), "--filters", "6").refuses(2, "--filters", "--time");
        Files.writeString(
                folder.resolve("two.csv"),
                """
                time,heightMetres,kind
                2027-01-01T01:00Z,5,high
                2027-01-01T07:00Z,6,high
                """);
        Said.by("when", file(WISHES.replace("\"station\":\"nearest\"", "\"table\":\"two.csv\"")))
                .refuses(3, "table", "two high waters in a row");
    }
}
