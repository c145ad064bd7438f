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
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Slates photographed between frames: small, turned by hand, dim and grainy. Clock and density are those that the test
 * itself put in.
 */
class SlateCommandTest {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;
    private static final double TRUE_STOPS = 6.3;
    /** The camera's clock is so many seconds ahead. */
    private static final long AHEAD = 47;

    private static final LocalDateTime BEGINS = LocalDateTime.of(2027, 1, 14, 17, 15);

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

    private JsonObject slate(String... more) {
        String[] command = new String[4 + more.length];
        command[0] = "slate";
        command[1] = "-o";
        command[2] = folder.resolve("slate.svg").toString();
        command[3] = "--json";
        System.arraycopy(more, 0, command, 4, more.length);
        Said said = Said.by(command);
        assertThat(said.code()).as(said.err()).isZero();
        return Asked.parse(said.out());
    }

    /** Photographs a code: a third of the picture wide, turned by 12°, in dim light with grain. */
    private void photograph(Path card, String name, JsonObject slate, int second) throws IOException {
        int size = slate.getInt("size") + 2 * slate.getInt("quiet");
        double module = WIDTH / 2.2 / size;
        SplittableRandom dice = new SplittableRandom(second);
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            double x = p % WIDTH - WIDTH / 2.0;
            double y = Math.floorDiv(p, WIDTH) - HEIGHT / 2.0;
            int column = (int) Math.floor((x * Math.cos(0.2) + y * Math.sin(0.2)) / module + size / 2.0);
            int row = (int) Math.floor((y * Math.cos(0.2) - x * Math.sin(0.2)) / module + size / 2.0);
            boolean on = column >= 0 && row >= 0 && column < size && row < size;
            int quiet = slate.getInt("quiet");
            boolean inside = column >= quiet && row >= quiet && column < size - quiet && row < size - quiet;
            boolean dark =
                    inside && slate.getArray("rows").getString(row - quiet).charAt(column - quiet) == '1';
            double v = (on ? dark ? 30 : 150 : 70) + 12 * (dice.nextDouble() - 0.5);
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (byte) Math.round(v);
            }
        }
        write(card, name, codes, second, 1.0 / 60);
    }

    /** The scene: stripes with grain; through the filter 64 times as long and {@value #TRUE_STOPS} stops darker. */
    private void expose(Path card, String name, int second, boolean filtered) throws IOException {
        byte[] codes = TestFrames.codes(7, WIDTH, HEIGHT);
        double light = filtered ? 64 * Math.pow(2, -TRUE_STOPS) : 1;
        for (int i = 0; i < codes.length; i++) {
            double linear = light * linear((codes[i] & 0xFF) / 255.0);
            double code = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
            codes[i] = (byte) Math.round(255 * code);
        }
        write(card, name, codes, second, filtered ? 8 : 1.0 / 8);
    }

    /** IEC 61966-2-1. */
    private static double linear(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    private static void write(Path card, String name, byte[] codes, int second, double exposure) throws IOException {
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(exposure),
                OptionalDouble.of(11),
                OptionalDouble.of(100),
                OptionalDouble.of(28),
                Optional.of(BEGINS.plusSeconds(second + AHEAD)),
                1,
                List.of(),
                "test frame");
        JpegWriter.write(card.resolve(name), CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts);
    }

    @Test
    void slatesSetTheClockAndTeachTheFilter() throws Exception {
        Path card = Files.createDirectory(folder.resolve("card"));
        photograph(card, "a.jpg", slate("--time", "2027-01-14T17:15:00+01:00", "--view", "cove"), 0);
        expose(card, "b.jpg", 10, false);
        String[] filtered = {
            "--time", "2027-01-14T17:15:20+01:00", "--view", "cove", "--filters", "6", "--wish", "water=silky"
        };
        photograph(card, "c.jpg", slate(filtered), 20);
        expose(card, "d.jpg", 25, true);
        photograph(card, "e.jpg", slate("--time", "2027-01-14T17:15:40+01:00", "--view", "cove"), 40);
        expose(card, "f.jpg", 45, false);
        Said said = Said.by("sort", card.toString(), "--json", "--learn");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject document = Asked.parse(said.out());
        assertThat(document.getObject("clock").getDouble("cameraAheadSeconds")).isCloseTo(AHEAD, within(0.01));
        JsonObject d = frame(document, "d.jpg");
        assertThat(d.getObject("slate").getArray("filters")).containsExactly("6");
        assertThat(d.getObject("slate").getArray("wish")).containsExactly("water=silky");
        assertThat(d.getObject("slate").getString("taken")).isEqualTo("2027-01-14T16:15:25Z");
        assertThat(frame(document, "f.jpg").getObject("slate").getArray("filters"))
                .isEmpty();
        List<JsonObject> filters = Asked.rows(document.getArray("filters"));
        assertThat(filters).hasSize(1);
        assertThat(filters.get(0).getDouble("stops")).isCloseTo(TRUE_STOPS, within(0.05));
        assertThat(document.getArray("kept")).containsExactly("6");
        Said settings = Said.by("settings", "--meter", "f/11 1/8 ISO100", "--time", "8s", "--kit", "--json");
        assertThat(settings.code()).as(settings.err()).isZero();
        double measured = Asked.parse(settings.out()).getArray("choices").stream()
                .map(JsonObject.class::cast)
                .filter(c -> c.getArray("filters").size() == 1
                        && c.getArray("filters").get(0).equals("6"))
                .mapToDouble(c -> c.getDouble("stops"))
                .findFirst()
                .orElseThrow();
        assertThat(measured).isCloseTo(TRUE_STOPS, within(0.05));
    }

    private static JsonObject frame(JsonObject document, String file) {
        return Asked.rows(document.getArray("groups")).stream()
                .flatMap(g -> Asked.rows(g.getArray("frames")).stream())
                .filter(f -> f.getString("file").equals(file))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void wrongWordsAreRefusedByName() {
        String out = folder.resolve("s.png").toString();
        Said.by("slate", "-o", out, "--filters", "dense").refuses(2, "--filters", "dense");
        Said.by("slate", "-o", out, "--wish", "water=soup").refuses(2, "--wish", "soup");
        Said.by("slate", "-o", out, "--time", "soon").refuses(2, "--time", "soon");
        Said.by("slate", "-o", folder.resolve("s.gif").toString()).refuses(2, "-o", "s.gif");
    }
}
