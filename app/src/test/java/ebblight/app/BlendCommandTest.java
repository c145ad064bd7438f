package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code blend} says, and what it says of a wish it cannot meet. */
class BlendCommandTest {

    private static final int FRAMES = 12;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @BeforeEach
    void burst() throws Exception {
        Files.createDirectories(folder.resolve("burst"));
        for (int k = 0; k < FRAMES; k++) {
            TestFrames.write(folder.resolve("burst"), k, 160, 120);
        }
    }

    private Said blend(String parts) throws Exception {
        Path file = folder.resolve("parts.json");
        Files.writeString(file, parts);
        return Said.by(
                "blend",
                folder.resolve("burst").toString(),
                "--parts",
                file.toString(),
                "-o",
                folder.resolve("out.tif").toString(),
                "--masks",
                folder.resolve("masks").toString(),
                "--json");
    }

    private static String part(String fields) {
        return "{\"schema\":\"blend/1\",\"parts\":[{" + fields + "}]}";
    }

    @Test
    void everyLayerSaysWhatItIsMadeOf() throws Exception {
        Said said = blend(part("\"region\":\"rest\",\"time\":\"4s\""));
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        assertThat(answer.getString("schema")).isEqualTo("blend/1");
        List<JsonObject> layers = Asked.rows(answer.getArray("layers"));
        assertThat(layers).hasSize(1);
        assertThat(layers.get(0).getInt("frames")).isEqualTo(4);
        assertThat(layers.get(0).getDouble("seconds")).isEqualTo(2); // four exposures of half a second
        assertThat(layers.get(0).getObject("gaps").getInt("count")).isEqualTo(3);
        assertThat(Path.of(layers.get(0).getString("maskFile"))).exists();
    }

    @Test
    void itIsMadeAgainFromItsRecordThoughThePartsFileIsGone() throws Exception {
        assertThat(blend(part("\"region\":\"rest\",\"time\":\"4s\"")).code()).isZero();
        Files.delete(folder.resolve("parts.json"));
        Said again = Said.by("again", folder.resolve("out.tif.json").toString(), "--json");
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(Asked.parse(again.out()).getBoolean("identical")).isTrue();
    }

    @Test
    void aTimeLongerThanTheBurstHasWaysOutAndWritesNothing() throws Exception {
        Said said = blend(part("\"region\":\"rest\",\"time\":\"60s\""));
        assertThat(said.code()).isEqualTo(4);
        JsonObject answer = Asked.parse(said.out());
        // twelve frames a second apart, the last exposed for half a second
        assertThat(answer.getObject("conflict").getDouble("longestSeconds")).isEqualTo(11.5);
        List<JsonObject> ways = Asked.rows(answer.getArray("ways"));
        assertThat(ways).extracting(w -> w.getString("kind")).containsExactly("whole", "longer", "preview");
        assertThat(ways.get(1).getInt("frames")).isEqualTo(60);
        assertThat(folder.resolve("out.tif")).doesNotExist();
        assertThat(folder.resolve("out.tif.json")).doesNotExist();
    }

    @Test
    void aTimeShorterThanAFrameHasWaysOut() throws Exception {
        Said said = blend(part("\"region\":\"rest\",\"time\":\"1/8\""));
        assertThat(said.code()).isEqualTo(4);
        JsonObject conflict = Asked.parse(said.out()).getObject("conflict");
        assertThat(conflict.getDouble("shortestSeconds")).isEqualTo(0.5);
    }

    @Test
    void anUnknownRegionIsToldTheKnownOnes() throws Exception {
        blend(part("\"region\":\"volcano\",\"time\":\"4s\"")).refuses(3, "parts.json", "volcano", "fixed-1");
    }

    @Test
    void whatCannotBeMeantIsSaid() throws Exception {
        blend("{\"schema\":\"strokes/1\"}").refuses(3, "parts.json", "blend/1");
        blend(part("\"region\":\"rest\"")).refuses(3, "parts[0]", "time, frame, people or trails");
        blend(part("\"region\":\"rest\",\"time\":\"4s\",\"frame\":\"lull\"")).refuses(3, "time and frame");
        blend(part("\"region\":\"rest\",\"time\":\"soon\"")).refuses(3, "parts[0].time", "soon");
        blend(part("\"region\":\"rest\",\"frame\":\"best\"")).refuses(3, "parts[0].frame", "lull");
        blend(part("\"region\":\"rest\",\"frame\":99")).refuses(3, "99", "12");
    }
}
