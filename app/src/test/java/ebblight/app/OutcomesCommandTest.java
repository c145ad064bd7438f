package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutcomesCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private final String dataBefore = System.getProperty("ebblight.data", "");

    @BeforeEach
    void ownData() {
        System.setProperty("ebblight.data", folder.resolve("data").toString());
    }

    @AfterEach
    void leaveData() {
        System.setProperty("ebblight.data", dataBefore);
    }

    @Test
    void anEmptyMemorySaysWhatFillsIt() {
        Said said = Said.by("outcomes");
        assertThat(said.code()).isZero();
        assertThat(said.out()).contains("Nothing is remembered yet").contains("outing new");
    }

    @Test
    void anEntryWithoutATimeIsKeptAndNamed() throws Exception {
        Path outing = folder.resolve("cove");
        assertThat(Said.by("outing", "new", outing.toString(), "--at", "48.65,-2.03")
                        .code())
                .isZero();
        Path phone = folder.resolve("phone.json");
        Files.writeString(
                phone,
                "{\"schema\":\"outing/1\",\"revision\":1,\"log\":[{\"frame\":1,\"openedAt\":\"2027-01-03T10:01:00Z\","
                        + "\"openSeconds\":8},{\"frame\":2,\"openedAt\":\"ten past ten\",\"openSeconds\":8}]}");
        Said said = Said.by("outing", "join", outing.toString(), phone.toString());
        assertThat(said.code()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("2 entries")
                .contains("entry 2 of the log does not say when the shutter opened");
        assertThat(Files.readString(outing.resolve("outing.json"))).contains("ten past ten");
    }

    @Test
    void aJoinedLogIsRememberedExportedAndTakenInElsewhere() throws Exception {
        Path outing = folder.resolve("coast");
        assertThat(Said.by("outing", "new", outing.toString(), "--at", "48.65,-2.03")
                        .code())
                .isZero();
        StringBuilder log = new StringBuilder();
        for (int k = 0; k < 6; k++) {
            log.append(k == 0 ? "" : ",")
                    .append("{\"openedAt\":\"2027-01-03T10:0" + k + ":00Z\",\"openSeconds\":8,\"verdict\":\""
                            + (k < 5 ? "keep" : "not") + "\"}");
        }
        Path phone = folder.resolve("phone.json");
        Files.writeString(phone, "{\"schema\":\"outing/1\",\"revision\":1,\"log\":[" + log + "]}");
        assertThat(Said.by("outing", "join", outing.toString(), phone.toString())
                        .code())
                .isZero();
        Path kept = folder.resolve("memory.json");
        Said said = Said.by("outcomes", "--export", kept.toString());
        assertThat(said.out()).contains("kept 5 of 6");
        System.setProperty("ebblight.data", folder.resolve("elsewhere").toString());
        Said taken = Said.by("outcomes", "--json", "--import", kept.toString());
        assertThat(JsonParser.object()
                        .from(taken.out())
                        .getArray("times")
                        .getObject(0)
                        .getInt("kept"))
                .isEqualTo(5);
        Files.writeString(
                kept, Files.readString(kept).replaceFirst("\"openSeconds\":[0-9.]+", "\"openSeconds\":\"eight\""));
        Said refused = Said.by("outcomes", "--import", kept.toString());
        assertThat(refused.code()).isEqualTo(3);
        assertThat(refused.err()).contains("memory.json").contains("entries[0]");
    }
}
