package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Several programs at work in one folder and on one database at the same time. */
class SideBySideTest {

    private static final int PROGRAMS = 4;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void logsJoinedAtOnceAreAllKept() throws Exception {
        Writer.writeInputs(folder);
        Path outing = folder.resolve("outing");
        List<Process> programs = new ArrayList<>();
        for (int k = 0; k < PROGRAMS; k++) {
            Path log = folder.resolve("log" + k + ".json");
            Files.writeString(
                    log, Files.readString(folder.resolve("log.json")).replace("T17:00:00Z", "T17:0" + k + ":00Z"));
            programs.add(start("outing", "join", outing.toString(), log.toString()));
        }
        end(programs);
        JsonObject kept = JsonParser.object().from(Files.readString(outing.resolve("outing.json")));
        assertThat(kept.getArray("log")).hasSize(PROGRAMS);
    }

    /** The first to come makes the database; the others wait for it instead of making their own over it. */
    @Test
    void aDatabaseBegunByManyAtOnceIsWhole() throws Exception {
        List<Process> programs = new ArrayList<>();
        for (int k = 0; k < PROGRAMS; k++) {
            programs.add(start("settings", "--kit", "--meter", "f/8 1/60 ISO100", "--time", "8s"));
        }
        end(programs);
        end(List.of(start("settings", "--kit", "--meter", "f/8 1/60 ISO100", "--time", "8s")));
    }

    private Process start(String... command) throws Exception {
        Path said = Files.createTempFile(folder, "said", ".txt");
        return Child.start(folder.resolve("data"), said, List.of(command));
    }

    private void end(List<Process> programs) throws Exception {
        for (Process program : programs) {
            assertThat(program.waitFor(120, TimeUnit.SECONDS)).isTrue();
        }
        StringBuilder said = new StringBuilder();
        try (var files = Files.newDirectoryStream(folder, "said*.txt")) {
            for (Path file : files) {
                said.append(Files.readString(file)).append('\n');
            }
        }
        assertThat(programs).as(said.toString()).allMatch(p -> p.exitValue() == 0);
    }
}
