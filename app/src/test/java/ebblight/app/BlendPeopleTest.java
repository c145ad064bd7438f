package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody walks before a wall that stands, at a known pace: what he covers, and for how long, follows from that. */
class BlendPeopleTest {

    private static final int WIDTH = 160;
    private static final int HEIGHT = 120;
    private static final int FRAMES = 24;
    private static final int PACE = 5; // pixels a frame
    private static final int FROM_ROW = 40;
    private static final int TO_ROW = 80;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** Frames of half a second, a second apart. */
    private void walk(int wide, int code) throws IOException {
        Path burst = Files.createDirectories(folder.resolve("burst"));
        for (int k = 0; k < FRAMES; k++) {
            byte[] codes = TestFrames.codes(k, WIDTH, HEIGHT);
            for (int y = FROM_ROW; y < TO_ROW; y++) {
                for (int x = 15 + PACE * k; x < 15 + PACE * k + wide; x++) {
                    for (int c = 0; c < 3; c++) {
                        codes[3 * (y * WIDTH + x) + c] = (byte) code;
                    }
                }
            }
            PictureFacts facts = new PictureFacts(
                    OptionalDouble.of(0.5),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15, k)),
                    1,
                    List.of(),
                    "walk");
            JpegWriter.write(burst.resolve("f" + (100 + k) + ".jpg"), CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts);
        }
    }

    private JsonObject layer(String wish) throws Exception {
        Path parts = folder.resolve("parts.json");
        Files.writeString(parts, "{\"schema\":\"blend/1\",\"parts\":[{\"region\":\"rest\"," + wish + "}]}");
        Said said = Said.by(
                "blend",
                folder.resolve("burst").toString(),
                "--parts=" + parts,
                "-o=" + folder.resolve("out.jpg"),
                "--masks=" + folder.resolve("masks"),
                "--json");
        assertThat(said.code()).as(said.err()).isZero();
        return Asked.parse(said.out()).getArray("layers").getObject(0);
    }

    private int seen(int x, int y) throws IOException {
        return ImageIO.read(folder.resolve("out.jpg").toFile()).getRaster().getSample(x, y, 1);
    }

    /** Ten pixels wide at five a frame: before any place he stands in two frames of 24. */
    @Test
    void whoWalksThroughIsGoneAndHisTimeAtEachPlaceIsTold() throws Exception {
        walk(2 * PACE, 15);
        JsonObject layer = layer("\"people\":\"gone\"");
        assertThat(layer.getString("of")).isEqualTo("people gone");
        assertThat(layer.getDouble("longestCovered")).isCloseTo(2.0 / FRAMES, within(1.01 / FRAMES));
        // 125 columns by 40 rows of 160 by 120, the first and last pace included
        double places = (FRAMES + 1.0) * PACE * (TO_ROW - FROM_ROW) / (WIDTH * HEIGHT);
        assertThat(layer.getDouble("coveredPlaces")).isCloseTo(places, within(0.15 * places));
        for (int x = 20; x < 140; x += 7) {
            double wall = 124 + 60 * Math.sin(x / 9.0 + Math.sin(60 / 17.0)); // the pattern, its grain in the middle
            assertThat((double) seen(x, 60)).as("column " + x).isCloseTo(wall, within(8.0));
        }
        assertThat(Path.of(layer.getString("coveredFile"))).exists();
    }

    @Test
    void aLampDrawsOneTrailAndItsGapsAreTold() throws Exception {
        walk(PACE, 250);
        JsonObject layer = layer("\"trails\":\"joined\"");
        assertThat(layer.getString("of")).isEqualTo("trails joined");
        for (int x = 20; x < 130; x++) {
            assertThat(seen(x, 60)).as("column " + x).isGreaterThan(225);
        }
        JsonObject gaps = layer.getObject("gaps");
        assertThat(gaps.getInt("count")).isEqualTo(FRAMES - 1);
        assertThat(gaps.getDouble("longestSeconds")).isCloseTo(0.5, within(1e-6));
    }
}
