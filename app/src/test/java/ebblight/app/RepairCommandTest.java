package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.GreyPng;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code repair} as it is typed: what it says, what it never writes over, and that it comes out the same again. */
class RepairCommandTest {

    private static final int WIDTH = 96;
    private static final int HEIGHT = 64;
    private static final int HOT = 20 * WIDTH + 30;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path input = Path.of("");
    private Path dark = Path.of("");

    @BeforeEach
    void writePictureAndDark() throws IOException {
        input = folder.resolve("in.jpg");
        dark = Files.createDirectory(folder.resolve("darks")).resolve("dark.png");
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        byte[] black = new byte[WIDTH * HEIGHT];
        black[HOT] = (byte) 200;
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (byte) (p == HOT ? 240 : 60 + p / WIDTH);
            }
        }
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "test picture");
        JpegWriter.write(input, CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts);
        GreyPng.write(dark, black, WIDTH, HEIGHT);
    }

    private Said repair(String... more) {
        String[] command = new String[2 + more.length];
        command[0] = "repair";
        command[1] = input.toString();
        System.arraycopy(more, 0, command, 2, more.length);
        return Said.by(command);
    }

    private String in(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void whatWasDoneIsToldMaskedAndTheSameAgain() throws Exception {
        Said said = repair("--darks", in("darks"), "-o", in("out.jpg"), "--mask", in("mask.png"), "--json");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        assertThat(answer.getString("schema")).isEqualTo("repair/1");
        JsonObject hot = answer.getArray("done").getObject(0);
        assertThat(hot.getString("kind")).isEqualTo("hotPixels");
        assertThat(hot.getInt("pixels")).isEqualTo(1);
        int mask = ImageIO.read(folder.resolve("mask.png").toFile()).getRaster().getSample(HOT % WIDTH, HOT / WIDTH, 0);
        assertThat(mask).isEqualTo(255);
        int repaired =
                ImageIO.read(folder.resolve("out.jpg").toFile()).getRaster().getSample(HOT % WIDTH, HOT / WIDTH, 0);
        assertThat(repaired).isBetween(75, 90); // its neighbours have 80, less what JPEG rings
        Said again = Said.by("again", in("out.jpg.json"), "--json");
        assertThat(Asked.parse(again.out()).getBoolean("identical"))
                .as(again.out())
                .isTrue();
    }

    @Test
    void originalsAndDarksAreNeverWritten() throws Exception {
        byte[] was = Files.readAllBytes(dark);
        Path named = Files.copy(dark, folder.resolve("darks").resolve("dark.tif"));
        repair("--darks", named.toString(), "-o", named.toString()).refuses(ExitCode.WRONG_USAGE, "originals stay");
        repair("--darks", in("darks"), "-o", named.toString()).refuses(ExitCode.WRONG_USAGE, "originals stay");
        repair("--darks", in("darks"), "-o", in("o.tif"), "--mask", dark.toString())
                .refuses(ExitCode.WRONG_USAGE, "--mask", "originals stay");
        repair("--level", "1", "-o", input.toString()).refuses(ExitCode.WRONG_USAGE, "originals stay");
        assertThat(Files.readAllBytes(dark)).isEqualTo(was);
        assertThat(Files.readAllBytes(named)).isEqualTo(was);
    }

    @Test
    void numbersThatCannotBeMeantAreNamed() throws Exception {
        repair("--cast", "0.9", "-o", in("o.tif")).refuses(ExitCode.WRONG_USAGE, "--cast", "2 numbers");
        repair("--level", "60", "-o", in("o.tif")).refuses(ExitCode.WRONG_USAGE, "level", "-45 to 45");
        repair("--level", "maybe", "-o", in("o.tif"))
                .refuses(ExitCode.WRONG_USAGE, "--level", "maybe", "degrees", "auto");
        Path file = Files.writeString(
                folder.resolve("r.json"), "{\"schema\":\"repair/1\",\"cast\":{\"red\":0,\"blue\":1}}");
        repair("--with", file.toString(), "-o", in("o.tif")).refuses(ExitCode.UNUSABLE_INPUT, "r.json", "cast");
        Files.writeString(file, "{\"schema\":\"repair/1\",\"sharpen\":1}");
        repair("--with", file.toString(), "-o", in("o.tif")).refuses(ExitCode.UNUSABLE_INPUT, "sharpen", "no part");
        assertThat(folder.resolve("o.tif")).doesNotExist();
    }

    /** Rows under an edge that falls by one pixel in 20 to the right: tan 2.86° (trigonometry). */
    @Test
    void aClearHorizonIsLevelledAndOneThatIsNoneIsLeft() throws Exception {
        int w = 640;
        int h = 420;
        byte[] codes = new byte[3 * w * h];
        for (int p = 0; p < w * h; p++) {
            int row = p / w;
            double below = Math.max(0, Math.min(1, row - (200 + (p % w - w / 2) / 20.0) + 0.5));
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (byte) Math.round(170 - 90 * below);
            }
        }
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "horizon");
        JpegWriter.write(folder.resolve("tilted.jpg"), CodedPicture.srgb8(w, h, codes), facts);
        Said said = Said.by("repair", in("tilted.jpg"), "--level", "auto", "-o", in("level.tif"));
        assertThat(said.code()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("turned by -2.8")
                .contains("right end lies 2.8")
                .contains("±");
        Said left = Said.by("repair", input.toString(), "--level", "auto", "-o", in("left.tif"));
        assertThat(left.out()).contains("no horizon is clear enough");
    }

    @Test
    void aWholeCardServesAsDarksAndTheListOfSortAsDust() throws Exception {
        Path card = Files.createDirectory(folder.resolve("card"));
        Files.copy(dark, card.resolve("d1.png"));
        Files.copy(input, card.resolve("picture.jpg"));
        Path sorted = Files.writeString(
                folder.resolve("sort.json"),
                "{\"schema\":\"sort/1\",\"dust\":[{\"x\":0.7,\"y\":0.5,\"radius\":0.01,\"stops\":0.3,\"views\":2}]}");
        Said said = repair("--darks", card.toString(), "--dust-file", sorted.toString(), "-o", in("o.tif"), "--json");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        assertThat(answer.getArray("done"))
                .extracting(d -> ((JsonObject) d).getString("kind"))
                .contains("dust");
        assertThat(String.join(
                        "; ",
                        answer.getArray("warnings").stream()
                                .map(String::valueOf)
                                .toList()))
                .contains("dark frames: d1.png")
                .contains("hold light: picture.jpg");
        Files.writeString(sorted, "{\"schema\":\"kit/1\"}");
        repair("--dust-file", sorted.toString(), "-o", in("p.tif"))
                .refuses(ExitCode.UNUSABLE_INPUT, "sort.json", "no dust");
    }

    @Test
    void aFileOfNumbersDoesWhatTheOptionsDo() throws Exception {
        Path file = Files.writeString(
                folder.resolve("r.json"),
                "{\"schema\":\"repair/1\",\"cast\":{\"red\":0.9,\"green\":1,\"blue\":1.1},\"vignetting\":0.3}");
        assertThat(repair("--with", file.toString(), "-o", in("a.jpg")).code()).isZero();
        assertThat(repair("--cast", "0.9,1.1", "--vignetting", "0.3", "-o", in("b.jpg"))
                        .code())
                .isZero();
        assertThat(ImageIO.read(folder.resolve("a.jpg").toFile()).getRGB(3, 3))
                .isEqualTo(ImageIO.read(folder.resolve("b.jpg").toFile()).getRGB(3, 3));
        assertThat(ImageIO.read(folder.resolve("a.jpg").toFile()).getRGB(3, 3))
                .isNotEqualTo(ImageIO.read(input.toFile()).getRGB(3, 3));
    }
}
