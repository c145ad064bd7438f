package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code tide}: what a person is told of the water, and what must stand beside it every time. */
class TideCommandTest {

    private static final String[] CAUTIONS = {"weather, surge and waves", "Not for navigation", "turn your back"};

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private static Said tide(String... water) {
        String[] command = new String[water.length + 5];
        command[0] = "tide";
        System.arraycopy(water, 0, command, 1, water.length);
        System.arraycopy(
                new String[] {"--from", "2027-01-10T00:00Z", "--to", "2027-01-11T00:00Z"},
                0,
                command,
                water.length + 1,
                4);
        return Said.by(command);
    }

    /** These words stand with every tide, whatever it was made from and however it is told. */
    @Test
    void cautionsStandWithEveryTide() throws Exception {
        Path table = Files.writeString(
                folder.resolve("waters.csv"),
                "time,heightMetres,kind\n2027-01-10T03:00Z,5,high\n2027-01-10T09:00Z,1,low\n2027-01-10T15:20Z,5,high\n");
        for (String[] water :
                new String[][] {{"--station", "saint malo"}, {"--near", "48.65,-2.03"}, {"--table", table.toString()}
                }) {
            Said said = tide(water);
            assertThat(said.code()).as(said.err()).isZero();
            assertThat(said.out()).contains(CAUTIONS);
            String[] asJson = new String[water.length + 1];
            System.arraycopy(water, 0, asJson, 0, water.length);
            asJson[water.length] = "--json";
            assertThat(JsonParser.object()
                            .from(tide(asJson).out())
                            .getArray("cautions")
                            .toString())
                    .contains(CAUTIONS);
        }
        assertThat(Said.by("tide", "--help").out()).contains("Not for navigation");
    }

    /** Constituents of the Bay of Fundy that no list that was read explains: a person at the shore must know. */
    @Test
    void whatIsLeftOutIsToldByName() throws Exception {
        Said said = tide("--station", "spencers island");
        assertThat(said.code()).as(said.err()).isZero();
        assertThat(said.out()).containsPattern("left out because .*3L2.*at most \\d+ cm");
        JsonObject answer = JsonParser.object()
                .from(tide("--station", "spencers island", "--json").out());
        assertThat(answer.getArray("leftOut").toString()).contains("3L2");
        Path wishes = Files.writeString(
                folder.resolve("w.json"),
                "{\"schema\":\"wishes/1\",\"at\":\"45.33,-64.7\",\"zone\":\"UTC\",\"from\":\"2027-01-10\",\"to\":\"2027-01-12\","
                        + "\"station\":\"spencers island\",\"tideDirection\":\"falling\"}");
        assertThat(Said.by("when", wishes.toString()).out()).containsPattern("left out because .*3L2");
    }

    /** Saint-Malo's station is at its harbour; a place two degrees out at sea has to be told so. */
    @Test
    void aStationFarAwayIsWarnedOf() {
        assertThat(tide("--near", "48.65,-2.03").out()).doesNotContain("use a local table");
        assertThat(tide("--near", "47.5,-30").out()).contains("km away", "use a local table");
    }

    @Test
    void whatCannotBeUsedIsNamed() {
        tide("--near", "95,0").refuses(2, "--near", "95");
        tide("--station", "no such port").refuses(2, "--station", "no such port");
        Said.by("tide", "--station", "saint malo", "--from", "2027-02-30T00:00Z", "--to", "2027-03-02T00:00Z")
                .refuses(2, "from", "2027-02-30");
    }
}
