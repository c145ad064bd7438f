package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** A folder of a thousand frames, some of them damaged in every way: a result comes out, and a list of what was left out. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DamagedFolderTest {

    private static final int FRAMES = 1000;
    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;

    @SuppressWarnings("NullAway.Init") // set before all tests
    private Path folder;

    /** Names of damaged frames, and a word of the reason that must be given. */
    private final Map<String, String> damaged = new TreeMap<>();

    private int sound;

    @BeforeAll
    void thousandFrames(@TempDir Path shared) throws IOException {
        folder = Files.createDirectory(shared.resolve("card"));
        for (int k = 0; k < FRAMES; k++) {
            Path file = TestFrames.write(folder, k, WIDTH, HEIGHT);
            byte[] bytes = Files.readAllBytes(file);
            String word =
                    switch (k % 50) {
                        case 7 -> "cut off";
                        case 17 -> "empty";
                        case 27 -> "not a picture";
                        default -> "";
                    };
            switch (word) {
                case "cut off" -> Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
                case "empty" -> Files.write(file, new byte[0]);
                case "not a picture" -> Files.writeString(file, "a note that was named like a picture");
                default -> sound++;
            }
            if (!word.isEmpty()) {
                damaged.put(String.valueOf(file.getFileName()), word);
            }
        }
        Path wide = TestFrames.write(folder, FRAMES, 2 * WIDTH, HEIGHT); // another size
        Files.move(wide, folder.resolve("wide.jpg"));
        Files.copy(folder.resolve("f100.jpg"), folder.resolve("f100-copy.jpg"));
        TiffWriter.write(
                folder.resolve("sixteen.tif"),
                CodedPicture.srgb8(WIDTH, HEIGHT, TestFrames.codes(3, WIDTH, HEIGHT)),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.of(0.5), 1, List.of(), "16 bits"),
                Work.alone());
        Path denied = folder.resolve("f101.jpg");
        Files.setPosixFilePermissions(denied, PosixFilePermissions.fromString("---------"));
        if (!Files.isReadable(denied)) { // who runs as root may read everything
            damaged.put("f101.jpg", "permission");
            sound--;
        }
    }

    private static Map<String, String> skipped(JsonObject answer) {
        return Asked.rows(answer.getArray("skipped")).stream()
                .collect(Collectors.toMap(
                        s -> String.valueOf(Path.of(s.getString("file")).getFileName()), s -> s.getString("reason")));
    }

    private void eachIsListed(Map<String, String> skipped) {
        damaged.forEach((name, word) -> assertThat(skipped.get(name)).as(name).contains(word));
    }

    @Test
    void aStackIsMadeOfTheOthers() throws Exception {
        Path out = folder.resolveSibling("stack-of-damaged.tif");
        Said said = Said.by("stack", folder.toString(), "-o", out.toString(), "--json");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        Map<String, String> skipped = skipped(answer);
        eachIsListed(skipped);
        assertThat(skipped.get("wide.jpg")).contains("128 × 48");
        assertThat(skipped).hasSize(damaged.size() + 2); // the wide one and the copy
        assertThat(answer.getInt("frames") + skipped.size()).isEqualTo(FRAMES + 3);
        assertThat(Files.size(out)).isPositive();
    }

    @Test
    void aCardIsSortedWithoutThem() throws Exception {
        Said said = Said.by("sort", folder.toString(), "--json");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        Map<String, String> skipped = skipped(answer);
        eachIsListed(skipped);
        assertThat(skipped.get("f100.jpg") == null ? skipped.get("f100-copy.jpg") : skipped.get("f100.jpg"))
                .contains("byte for byte");
        assertThat(skipped).hasSize(damaged.size() + 1);
        int frames = Asked.rows(answer.getArray("groups")).stream()
                .mapToInt(g -> g.getArray("frames").size())
                .sum();
        assertThat(frames).isEqualTo(sound + 2); // the wide one and the one of 16 bits are frames of the card too
    }
}
