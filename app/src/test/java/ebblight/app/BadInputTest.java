package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.imaging.ClipWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What nobody meant to hand in: one sentence that names it, the right code, and nothing left behind. */
class BadInputTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @SuppressWarnings("NullAway.Init") // set before each test
    private Path out;

    @BeforeEach
    void makeRoomForResults() throws Exception {
        out = Files.createDirectory(folder.resolve("out"));
    }

    /** Every command that works on frames, on {@code inputs}. */
    private List<String[]> onFrames(String... inputs) {
        List<String[]> all = new ArrayList<>();
        String tif = out.resolve("o.tif").toString();
        String jpg = out.resolve("o.jpg").toString();
        for (String[] command : new String[][] {
            {"measure", "--regions-out", out.resolve("o.png").toString()},
            {"wish", "--wish", "water=silky"},
            {"preview", "--time", "8s", "-o", jpg},
            {"stack", "-o", tif}
        }) {
            String[] whole = Arrays.copyOf(command, command.length + inputs.length);
            System.arraycopy(inputs, 0, whole, command.length, inputs.length);
            all.add(whole);
        }
        return all;
    }

    private void nothingIsLeft() throws Exception {
        try (Stream<Path> left = Files.list(out)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aMissingFileIsNamed() throws Exception {
        for (String[] command : onFrames(folder.resolve("gone.mp4").toString())) {
            Said.by(command).refuses(3, "gone.mp4", "does not exist");
        }
        Said.by("balance", folder.resolve("gone.jpg").toString()).refuses(3, "gone.jpg");
        nothingIsLeft();
    }

    @Test
    void aFolderWithoutFramesIsNamed() throws Exception {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        for (String[] command : onFrames(empty.toString())) {
            Said.by(command).refuses(3, "empty");
        }
        nothingIsLeft();
    }

    @Test
    void textNamedAsAPictureIsNamed() throws Exception {
        Path text = Files.writeString(folder.resolve("text.jpg"), "no picture");
        for (String[] command : onFrames(text.toString())) {
            Said.by(command).refuses(3, "text.jpg");
        }
        Said.by("balance", text.toString()).refuses(3, "text.jpg");
        nothingIsLeft();
    }

    @Test
    void oneFrameIsTooFewToTellMotion() throws Exception {
        Path one = TestFrames.write(folder, 0, 160, 120);
        Said.by("measure", one.toString()).refuses(3, "f100.jpg", "several frames");
        Said.by("wish", one.toString(), "--wish", "water=silky").refuses(3, "f100.jpg");
        Said.by("preview", one.toString(), "--time", "8s", "-o", out + "/o.jpg").refuses(3, "f100.jpg");
        nothingIsLeft();
    }

    @Test
    void framesOfAnotherSizeAreLeftOutByName() throws Exception {
        Path burst = burst(4);
        TestFrames.write(burst, 4, 120, 160);
        Said stacked = Said.by("stack", burst.toString(), "-o", out + "/o.tif", "--json");
        assertThat(stacked.code()).isZero();
        assertThat(stacked.out()).contains("f104.jpg").contains("\"frames\":4");
        Said measured = Said.by("measure", burst.toString(), "--json");
        assertThat(measured.code()).isZero();
        assertThat(measured.out()).contains("f104.jpg");
    }

    @Test
    void aClipCutToItsFirstBytesIsNamed() throws Exception {
        byte[] head = new byte[4096];
        // ISO 14496-12: a file type box, and then nothing that could be decoded
        byte[] type = {0, 0, 0, 16, 'f', 't', 'y', 'p', 'i', 's', 'o', 'm', 0, 0, 0, 0};
        System.arraycopy(type, 0, head, 0, type.length);
        Path cut = Files.write(folder.resolve("cut.mp4"), head);
        for (String[] command : onFrames(cut.toString())) {
            Said.by(command).refuses(3, "cut.mp4");
        }
        nothingIsLeft();
    }

    @Test
    void aTargetThatCannotBeWrittenIsNamed() throws Exception {
        Path burst = burst(3);
        String nowhere = folder.resolve("nowhere").resolve("o.tif").toString();
        Said.by("stack", burst.toString(), "-o", nowhere).refuses(3, "nowhere");
        Said.by("preview", burst.toString(), "--time", "8s", "-o", nowhere.replace(".tif", ".jpg"))
                .refuses(3, "nowhere");
        Said.by("stack", burst.toString(), "-o", out.resolve("o.xyz").toString())
                .refuses(2, "o.xyz");
        nothingIsLeft();
    }

    @Test
    void aTargetThatIsAFolderIsNamed() throws Exception {
        Path burst = burst(3);
        Path taken = Files.createDirectory(folder.resolve("taken.tif"));
        Said.by("stack", burst.toString(), "-o", taken.toString()).refuses(3, "taken.tif", "is a folder");
        String[] measure = {"measure", burst.toString()};
        Said.by(with(measure, "--regions-out", folder + "/nowhere/r.png")).refuses(3, "nowhere");
        Said.by(with(measure, "--picture", out + "/p.xyz")).refuses(2, "--picture", "p.xyz", ".png");
        nothingIsLeft();
    }

    /** Whoever names a frame as the result would lose it. */
    @Test
    void originalsAreNeverWritten() throws Exception {
        Path burst = burst(3);
        Path frame = burst.resolve("f101.jpg");
        byte[] before = Files.readAllBytes(frame);
        String other = burst.resolve("../burst/f101.jpg").toString();
        Said.by("stack", burst.toString(), "-o", other).refuses(2, "-o", "f101.jpg", "originals");
        Said.by("preview", burst.toString(), "--time", "8s", "-o", frame.toString())
                .refuses(2, "-o", "f101.jpg");
        Path png = Files.copy(frame, burst.resolve("f103.png"));
        Said.by("measure", burst.toString(), "--regions-out", png.toString()).refuses(2, "--regions-out", "f103.png");
        Said.by("measure", burst.toString(), "--picture", png.toString()).refuses(2, "--picture", "f103.png");
        assertThat(frame).hasBinaryContent(before);
        assertThat(png).hasBinaryContent(before);
    }

    @Test
    void aClipCutInTheMiddleIsUsedAsFarAsItGoes() throws Exception {
        Path whole = folder.resolve("whole.mp4");
        try (ClipWriter writer = ClipWriter.begin(whole, 192, 128, 25)) {
            for (int k = 0; k < 75; k++) {
                writer.add(TestFrames.codes(k, 192, 128));
            }
            writer.commit();
        }
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("cut.mp4"), Arrays.copyOf(bytes, bytes.length * 6 / 10));
        for (String[] command : onFrames(cut.toString())) {
            Said said = Said.by(with(command, "--json"));
            // the wish is for water and there is none: wrong usage, and said so
            assertThat(said.code()).as(said.err()).isEqualTo(command[0].equals("wish") ? 2 : 0);
            assertThat(said.err()).doesNotContain("Exception");
            if (said.code() == 0 && !command[0].equals("preview")) {
                assertThat(said.out()).contains("cut.mp4").contains("of 3.0 s");
            }
        }
    }

    @Test
    void filesBesideTheFramesAreNamed() throws Exception {
        Path burst = burst(4);
        Path text = Files.writeString(folder.resolve("text.json"), "no document");
        Path other = Files.writeString(folder.resolve("other.json"), "{\"schema\":\"kit/1\"}");
        Path wide = Files.writeString(folder.resolve("wide.json"), "{\"schema\":\"camera/1\",\"widestFNumber\":0}");
        String[] settings = {"settings", "--meter", "f/16 1/100 ISO100", "--time", "2s", "--camera"};
        Said.by(with(settings, folder + "/gone.json")).refuses(3, "gone.json", "does not exist");
        Said.by(with(settings, text.toString())).refuses(3, "text.json", "JSON");
        Said.by(with(settings, other.toString())).refuses(3, "other.json", "kit/1", "camera/1");
        Said.by(with(settings, wide.toString())).refuses(3, "wide.json", "f-numbers");
        for (String[] command : onFrames(burst.toString())) {
            if (!command[0].equals("stack")) {
                Said.by(with(command, "--strokes", folder + "/gone.json")).refuses(3, "gone.json", "does not exist");
                Said.by(with(command, "--strokes", text.toString())).refuses(3, "text.json", "JSON");
            }
        }
        Said.by("stack", burst.toString(), "-o", out + "/o.tif", "--darks", folder + "/gone")
                .refuses(3, "gone");
        String[] tide = {"tide", "--from", "2027-01-14T00:00:00Z", "--to", "2027-01-15T00:00:00Z", "--table"};
        Path headless = Files.writeString(folder.resolve("headless.csv"), "2027-01-14T00:00:00Z,1,low\n");
        Path torn = Files.writeString(
                folder.resolve("torn.csv"),
                "time,heightMetres,kind\n2027-01-14T00:00:00Z,1,low\n2027-01-14T06:00:00Z,high\n");
        Path untimed = Files.writeString(
                folder.resolve("untimed.csv"), "time,heightMetres,kind\nmidnight,1,low\n2027-01-14T06:00:00Z,3,high\n");
        Said.by(with(tide, folder + "/gone.csv")).refuses(3, "gone.csv", "does not exist");
        Said.by(with(tide, headless.toString())).refuses(3, "headless.csv", "line 1", "time,heightMetres,kind");
        Said.by(with(tide, torn.toString())).refuses(3, "torn.csv", "line 3");
        Said.by(with(tide, untimed.toString())).refuses(3, "untimed.csv", "midnight");
        nothingIsLeft();
    }

    @Test
    void aWishThatNeverHoldsStillPrintsItsDocument() throws Exception {
        Path burst = burst(12);
        Path strokes = Files.writeString(
                folder.resolve("strokes.json"),
                "{\"schema\":\"strokes/1\",\"strokes\":[{\"kind\":\"flowing\",\"points\":[[0.1,0.5],[0.9,0.5]]}]}");
        String[] wish = {"wish", burst.toString(), "--strokes", strokes.toString(), "--wish", "water=as seen!", "--json"
        };
        Said said = Said.by(with(wish, "--wish", "water=glass"));
        assertThat(said.code()).as(said.err()).isEqualTo(4);
        assertThat(said.out()).contains("\"wish/1\"").contains("\"windows\":[]").contains("\"ways\":[{");
    }

    private Path burst(int frames) throws Exception {
        Path burst = Files.createDirectory(folder.resolve("burst"));
        for (int k = 0; k < frames; k++) {
            TestFrames.write(burst, k, 160, 120);
        }
        return burst;
    }

    @Test
    void valuesThatCannotBeReadAreQuoted() {
        String[] meter = {"settings", "--meter", "f/16 1/100 ISO100"};
        Said.by(with(meter, "--time", "-3s")).refuses(2, "-3s", "expected a time");
        Said.by(with(meter, "--time", "2s", "--filters", "ten")).refuses(2, "--filters: ", "ten", "expected");
        Said.by(with(meter, "--time", "2s", "--fading", "fast")).refuses(2, "fast");
        Said.by(with(meter, "--time", "2s", "--max-stack", "two")).refuses(2, "two");
        Said.by(with(meter)).refuses(2, "time");
        Said.by("settings", "--meter", "junk", "--time", "2s").refuses(2, "junk", "f/16 1/100 ISO100");
        Said.by("balance", "x.jpg", "--graduated", "two").refuses(2, "two", "number");
        Said.by(with(meter, "--time", "2s", "--filters", "6,,10")).refuses(2, "expected");
        Said.by(with(meter, "--from", "8s", "--to", "2s")).refuses(2, "to");
        Said.by(with(meter, "--time", "2s", "--max-stack", "9"))
                .refuses(2, "--max-stack: must lie between 0 and 4, was 9");
        Said.by(with(meter, "--time", "2s", "--bias", "-99")).refuses(2, "--bias: must", "-99");
        Said.by(with(meter, "--time", "2s", "--fading", "9")).refuses(2, "--fading: ");
        Said.by(with(meter, "--time", "2s", "--reciprocity", "7")).refuses(2, "--reciprocity: ");
        Said.by(with(meter, "--time", "2s", "--nearest", "-1")).refuses(2, "--nearest: ");
        Said.by(with(meter, "--from", "-3s", "--to", "2s")).refuses(2, "--from: ", "-3s");
        Said.by("preview", "x.mp4", "--time", "-3s", "-o", "o.jpg").refuses(2, "--time", "-3s");
        Said.by(with(meter, "--time", "2s", "--measured", "6=x", "--filters", "6"))
                .refuses(2, "measured");
        Said.by("settings", "--time", "2s").refuses(2, "--meter");
        Said.by("measure").refuses(2, "INPUT");
        Said.by("stack", "x.mp4").refuses(2, "-o");
        Said.by("stack", "x.mp4", "-o", "o.tif", "--brightest").refuses(2, "--brightest");
        Said.by("wish", "x.mp4", "--wish", "water=silky", "--view-width", "9").refuses(2, "--view-width", "9");
        Said.by("wish", "x.mp4").refuses(2, "--wish");
        Said.by("sky", "--at", "50,0").refuses(2, "--time");
        Said.by("sky", "--at", "50,0", "--time", "noon").refuses(2, "noon");
        Said.by("sky", "--at", "50,0", "--day", "2027-02-03", "--zone", "Moon/Base")
                .refuses(2, "Moon/Base");
        Said.by("sky", "--at", "50,0", "--time", "2027-01-14T12:00:00Z", "--cloud", "pink")
                .refuses(2, "pink");
        Said.by("sky", "--at", "50,0", "--time", "2027-01-14T12:00:00Z", "--elevation", "1e6")
                .refuses(2, "--elevation: ");
        Said.by("sky", "--at", "50,0", "--time", "2027-01-14T12:00:00Z", "--meter", "junk@2027-01-14T12:00:00Z")
                .refuses(2, "--meter: ", "f/16 1/100 ISO100");
        Said.by("tide", "--near", "50,0", "--from", "today", "--to", "2027-01-15T00:00:00Z")
                .refuses(2, "today");
        Said.by("tide", "--from", "2027-01-14T00:00:00Z", "--to", "2027-01-15T00:00:00Z")
                .refuses(2, "--station");
        Said.by("measure", "x.mp4", "--fps", "fast").refuses(2, "fast");
        Said.by("measure", "x.mp4", "--focal", "24").refuses(2, "--view-focal");
        Said.by("wish", "x.mp4", "--wish", "water=treacle").refuses(2, "treacle");
        Said.by("wish", "x.mp4", "--wish", "water").refuses(2, "water");
        Said.by("preview", "x.mp4", "--time", "long", "-o", "o.jpg").refuses(2, "long");
        Said.by("stack", "x.mp4", "-o", "o.tif", "--as", "average").refuses(2, "average");
        Said.by("sky", "--at", "95,0", "--time", "2027-01-14T12:00:00Z").refuses(2, "95");
        Said.by("sky", "--at", "50,0", "--day", "2027-02-30", "--zone", "UTC").refuses(2, "2027-02-30");
        Said.by(
                        "tide",
                        "--station",
                        "no such port anywhere",
                        "--from",
                        "2027-01-14T00:00:00Z",
                        "--to",
                        "2027-01-15T00:00:00Z")
                .refuses(2, "no such port anywhere");
    }

    @Test
    void aTimeOutOfReachStillPrintsItsDocument() {
        Said said = Said.by("settings", "--meter", "f/16 1/8000 ISO100", "--time", "4m", "--json");
        assertThat(said.code()).isEqualTo(4);
        assertThat(said.out()).contains("\"ways\"").contains("\"settings/1\"");
    }

    private static String[] with(String[] command, String... more) {
        String[] whole = Arrays.copyOf(command, command.length + more.length);
        System.arraycopy(more, 0, whole, command.length, more.length);
        return whole;
    }
}
