package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.GreyPng;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code sort} makes of a folder, and of one in which much is broken. */
class SortCommandTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;
    private static final String[] BROKEN = {
        "a-cut.jpg",
        "b-empty.jpg",
        "c-text.jpg",
        "d-notes.txt",
        "e-head.cr2",
        "g-link.jpg",
        "h-small.png",
        "i-closed.jpg",
        "z-copy.jpg"
    };

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private JsonObject sort(String... more) {
        String[] command = new String[3 + more.length];
        command[0] = "sort";
        command[1] = folder.toString();
        command[2] = "--json";
        System.arraycopy(more, 0, command, 3, more.length);
        Said said = Said.by(command);
        assertThat(said.code()).as(said.err()).isZero();
        return Asked.parse(said.out());
    }

    private Map<String, String> skipped(JsonObject document) {
        Map<String, String> skipped = new TreeMap<>();
        for (JsonObject each : Asked.rows(document.getArray("skipped"))) {
            skipped.put(each.getString("file"), each.getString("reason"));
        }
        return skipped;
    }

    @Test
    void aCardIsMeasuredOnceAndAgainWhenAnythingOnItChanges() throws Exception {
        for (int k = 0; k < 3; k++) {
            TestFrames.write(folder, k, WIDTH, HEIGHT);
        }
        JsonObject first = sort();
        assertThat(first.getBoolean("measuredBefore")).isFalse();
        JsonObject second = sort();
        assertThat(second.getBoolean("measuredBefore")).isTrue();
        second.put("measuredBefore", false);
        assertThat(second.toString()).isEqualTo(first.toString());
        assertThat(Said.by("sort", folder.toString()).out()).contains("nothing on the card changed");
        assertThat(sort("--anew").getBoolean("measuredBefore")).isFalse();
        assertThat(sort("--rate").getArray("sidecars")).isNotEmpty();
        assertThat(sort().getBoolean("measuredBefore"))
                .as("sidecars are no pictures")
                .isTrue();
        TestFrames.write(folder, 3, WIDTH, HEIGHT);
        JsonObject more = sort();
        assertThat(more.getBoolean("measuredBefore")).isFalse();
        assertThat(more.getArray("groups").getObject(0).getArray("frames")).hasSize(4);
    }

    @Test
    void everyFieldOfTheContractIsThere() throws Exception {
        for (int k = 0; k < 3; k++) {
            TestFrames.write(folder, k, WIDTH, HEIGHT);
        }
        List<JsonObject> groups = Asked.rows(sort().getArray("groups"));
        assertThat(groups).hasSize(1);
        List<JsonObject> frames = Asked.rows(groups.get(0).getArray("frames"));
        assertThat(frames).hasSize(3);
        assertThat(frames.stream().map(f -> f.getInt("rank"))).containsExactlyInAnyOrder(1, 2, 3);
        for (JsonObject frame : frames) {
            assertThat(frame.getString("file")).endsWith(".jpg");
            assertThat(frame.getDouble("fixedSharpness")).isBetween(0.0, 1.0);
            assertThat(frame).containsKeys("smoothness", "clippedFraction", "hotPixels", "notes");
            assertThat(frame.getArray("notes")).isNotEmpty();
        }
    }

    @Test
    void aBrokenFolderEndsWithAResultAndAListOfWhatWasLeftOut() throws Exception {
        for (int k = 0; k < 6; k++) {
            TestFrames.write(folder, k, WIDTH, HEIGHT);
        }
        Path other = Files.createDirectory(folder.resolve("101"));
        TestFrames.write(other, 20, HEIGHT, WIDTH); // upright, in a folder of its own
        byte[] sound = Files.readAllBytes(folder.resolve("f100.jpg"));
        Files.write(folder.resolve("a-cut.jpg"), Arrays.copyOf(sound, sound.length / 2));
        Files.write(folder.resolve("b-empty.jpg"), new byte[0]);
        Files.writeString(folder.resolve("c-text.jpg"), "no picture at all");
        Files.writeString(folder.resolve("d-notes.txt"), "notes");
        Files.write(folder.resolve("z-copy.jpg"), sound);
        Files.write(folder.resolve("e-head.cr2"), "II*\0no jpeg in here".getBytes(StandardCharsets.US_ASCII));
        Files.createSymbolicLink(folder.resolve("g-link.jpg"), folder.resolve("nowhere.jpg"));
        GreyPng.write(folder.resolve("h-small.png"), new byte[] {1, 2, 3, 4}, 2, 2);
        Path closed = Files.write(folder.resolve("i-closed.jpg"), sound);
        boolean denied = deny(closed);
        Map<String, String> skipped = skipped(sort());
        assertThat(skipped).containsOnlyKeys(BROKEN);
        assertThat(skipped.get("a-cut.jpg")).contains("cut off");
        assertThat(skipped.get("b-empty.jpg")).contains("empty");
        assertThat(skipped.get("c-text.jpg")).contains("not a picture");
        assertThat(skipped.get("d-notes.txt")).contains("no picture");
        // without a JPEG inside it would have to be developed
        assertThat(skipped.get("e-head.cr2")).contains("LibRaw");
        assertThat(skipped.get("g-link.jpg")).contains("no plain file");
        assertThat(skipped.get("h-small.png")).contains("too small");
        assertThat(skipped.get("z-copy.jpg")).contains("same file as");
        if (denied) {
            assertThat(skipped.get("i-closed.jpg")).contains("permission denied");
        } else {
            assertThat(skipped.get("i-closed.jpg")).contains("same file as"); // root reads everything
        }
    }

    private static boolean deny(Path file) throws IOException {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
        return !Files.isReadable(file);
    }

    @Test
    void picturesAreOnlyReadAndRatingsAreWrittenOnRequest() throws Exception {
        for (int k = 0; k < 3; k++) {
            Path file = TestFrames.write(folder, k, WIDTH, HEIGHT);
            Files.setLastModifiedTime(file, FileTime.fromMillis(1_000_000));
        }
        byte[] before = Files.readAllBytes(folder.resolve("f100.jpg"));
        sort();
        try (var list = Files.list(folder)) {
            assertThat(list).hasSize(3);
        }
        JsonObject document = sort("--rate");
        assertThat(document.getArray("sidecars")).isNotEmpty();
        try (var list = Files.list(folder)) {
            assertThat(list.filter(f -> f.toString().endsWith(".xmp"))).isNotEmpty();
        }
        assertThat(Files.readAllBytes(folder.resolve("f100.jpg"))).isEqualTo(before);
        assertThat(Files.getLastModifiedTime(folder.resolve("f100.jpg")).toMillis())
                .isEqualTo(1_000_000);
    }

    @Test
    void aFolderWithoutAnyPictureIsRefused() throws Exception {
        Said.by("sort", folder.toString()).refuses(3, folder.toString(), "holds no picture");
        Files.write(folder.resolve("b-empty.jpg"), new byte[0]);
        Said.by("sort", folder.toString()).refuses(3, "b-empty.jpg", "is empty");
        Said.by("sort", folder.resolve("nowhere").toString()).refuses(3, "does not exist");
    }

    /** A second view at the same hour: other pattern, other time. */
    @Test
    void twoViewsAreTwoGroupsWhateverTheNames() throws Exception {
        TestFrames.write(folder, 0, WIDTH, HEIGHT);
        TestFrames.write(folder, 1, WIDTH, HEIGHT);
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            double v = 120 + 70 * Math.sin(Math.floorDiv(p, WIDTH) / 5.0 + Math.sin(p % WIDTH / 13.0));
            Arrays.fill(codes, 3 * p, 3 * p + 3, (byte) Math.round(v));
        }
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15, 30)),
                1,
                List.of(),
                "another view");
        JpegWriter.write(folder.resolve("f101b.jpg"), CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts);
        List<JsonObject> groups = Asked.rows(sort().getArray("groups"));
        assertThat(groups.stream().map(g -> g.getArray("frames").size())).containsExactly(2, 1);
    }
}
