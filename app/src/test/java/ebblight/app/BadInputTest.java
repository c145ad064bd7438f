package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

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
        Path burst = Files.createDirectory(folder.resolve("burst"));
        for (int k = 0; k < 4; k++) {
            TestFrames.write(burst, k, 160, 120);
        }
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
        Path burst = Files.createDirectory(folder.resolve("burst"));
        for (int k = 0; k < 3; k++) {
            TestFrames.write(burst, k, 160, 120);
        }
        String nowhere = folder.resolve("nowhere").resolve("o.tif").toString();
        Said.by("stack", burst.toString(), "-o", nowhere).refuses(3, "nowhere");
        Said.by("preview", burst.toString(), "--time", "8s", "-o", nowhere.replace(".tif", ".jpg"))
                .refuses(3, "nowhere");
        Said.by("stack", burst.toString(), "-o", out.resolve("o.xyz").toString())
                .refuses(2, "o.xyz");
        nothingIsLeft();
    }

    @Test
    void valuesThatCannotBeReadAreQuoted() {
        String[] meter = {"settings", "--meter", "f/16 1/100 ISO100"};
        Said.by(with(meter, "--time", "-3s")).refuses(2, "-3s", "expected a time");
        Said.by(with(meter, "--time", "2s", "--filters", "ten")).refuses(2, "ten", "expected");
        Said.by(with(meter, "--time", "2s", "--fading", "fast")).refuses(2, "fast");
        Said.by(with(meter, "--time", "2s", "--max-stack", "two")).refuses(2, "two");
        Said.by(with(meter)).refuses(2, "time");
        Said.by("settings", "--meter", "junk", "--time", "2s").refuses(2, "junk", "f/16 1/100 ISO100");
        Said.by("balance", "x.jpg", "--graduated", "two").refuses(2, "two", "number");
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
