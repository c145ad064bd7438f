package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.core.numeric.Work;
import ebblight.imaging.LightPicture;
import ebblight.imaging.Whereabouts;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code write} writes and prints, and what it refuses. */
class WriteCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path input = Path.of("");
    private Path out = Path.of("");

    @BeforeEach
    void writeTheScene() throws Exception {
        input = TestScene.write(folder.resolve("scene.tif"), 600, 400);
        out = Files.createDirectory(folder.resolve("out"));
    }

    private Said by(String name, String... more) {
        String[] command = new String[4 + more.length];
        String[] first = {"write", input.toString(), "-o", out.resolve(name).toString()};
        System.arraycopy(first, 0, command, 0, 4);
        System.arraycopy(more, 0, command, 4, more.length);
        return Said.by(command);
    }

    private JsonObject run(String name, String... more) {
        String[] all = Arrays.copyOf(more, more.length + 1);
        all[more.length] = "--json";
        Said said = by(name, all);
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        assertThat(answer.getString("schema")).isEqualTo("write/1");
        assertThat(Path.of(answer.getString("file"))).isRegularFile();
        return answer;
    }

    /** Centimetres · pixels an inch / 2.54: 30 cm at 300 are 3543, 20 cm 2362; with 2 cm of border 4016 and 2835. */
    @Test
    void printsHaveTheSizeAsked() throws Exception {
        JsonObject plain = run("p.tif", "--size", "30x20", "--ppi", "300");
        assertThat(plain.getInt("width")).isEqualTo(3543);
        assertThat(plain.getInt("height")).isEqualTo(2362);
        assertThat(plain.getArray("warnings").getString(0)).contains("enlarged");
        JsonObject bordered = run("b.tif", "--size", "30x", "--ppi", "300", "--border", "2");
        assertThat(bordered.getInt("width")).isEqualTo(4016);
        assertThat(bordered.getInt("height")).isEqualTo(2835);
        LightPicture read = LightPicture.read(out.resolve("b.tif"), Work.alone());
        assertThat(read.bits()).isEqualTo(16);
        assertThat(read.light().green()[0]).isEqualTo(1f); // the border is white
        assertThat(read.light().green()[1500 * 4016 + 2000]).isLessThan(0.6f);
        JsonObject kept = run("k.tif", "--ppi", "200");
        assertThat(kept.getInt("width")).isEqualTo(600);
        assertThat(kept.getDouble("widthCentimetres")).isCloseTo(7.62, within(1e-9));
    }

    @Test
    void webPicturesFitAndSayNothingOfThePlace() throws Exception {
        JsonObject answer = run("w.jpg", "--long-edge", "450", "--at-most", "30kB", "--caption", "Ebb");
        assertThat(answer.getInt("width")).isEqualTo(450);
        assertThat(answer.getInt("height")).isEqualTo(300);
        assertThat(answer.getLong("bytes")).isLessThanOrEqualTo(30_000);
        assertThat(Files.size(out.resolve("w.jpg"))).isEqualTo(answer.getLong("bytes"));
        assertThat(answer.getString("place")).isEqualTo("left out");
        assertThat(Whereabouts.of(input)).isPresent();
        assertThat(Whereabouts.of(out.resolve("w.jpg"))).isEmpty();
        run("kept.jpg", "--place", "keep");
        assertThat(Whereabouts.of(out.resolve("kept.jpg")).orElseThrow().latitudeDegrees())
                .isCloseTo(TestScene.PLACE.latitudeDegrees(), within(1e-6));
    }

    @Test
    void pagesHoldWhatTheySay() throws Exception {
        Path plan = Files.writeString(
                folder.resolve("settings.json"),
                "{\"schema\":\"settings/1\",\"exposureValue100\":9,\"choices\":[{\"filters\":[\"10\"],\"fNumber\":11,"
                        + "\"iso\":100,\"correctedSeconds\":15,\"dial\":\"15 s\"}]}");
        run("l.pdf", "--lesson", "--without", input.toString(), "--settings", plan.toString());
        // 30 s against 15 s is one stop
        assertThat(words("l.pdf"))
                .contains("1.0 stops longer than planned")
                .contains("f/11")
                .contains("15 s");
        JsonObject hidden =
                run("h.pdf", "--lesson", "--without", input.toString(), "--settings", plan.toString(), "--hide");
        assertThat(hidden.getBoolean("hidden")).isTrue();
        assertThat(hidden.getDouble("changedFraction")).isZero(); // the same picture twice
        assertThat(words("h.pdf"))
                .doesNotContain("longer")
                .doesNotContain("f/11")
                .doesNotContain("30 s");
        assertThat(run("s.pdf", "--strip").getArray("grades")).hasSize(5);
        assertThat(words("s.pdf")).contains("grade 1.5");
        assertThat(run("c.pdf", "--contact", folder.toString()).getInt("pictures"))
                .isEqualTo(2);
        assertThat(words("c.pdf")).contains("scene.tif").contains("30 s");
        byte[] before = Files.readAllBytes(out.resolve("h.pdf"));
        run("h.pdf", "--lesson", "--without", input.toString(), "--settings", plan.toString(), "--hide");
        assertThat(Files.readAllBytes(out.resolve("h.pdf"))).isEqualTo(before);
    }

    private String words(String name) throws Exception {
        try (PDDocument pdf = Loader.loadPDF(out.resolve(name).toFile())) {
            return new PDFTextStripper().getText(pdf);
        }
    }

    @Test
    void whatCannotBeMeantIsNamed() throws Exception {
        by("o.tif", "--size", "30x30").refuses(2, "--size", "ratio");
        by("o.tif", "--size", "large").refuses(2, "--size", "60x40");
        by("o.tif", "--size", "900x600", "--ppi", "2000").refuses(2, "--size", "pixels");
        by("o.tif", "--at-most", "800kB").refuses(2, "--at-most", "web");
        by("o.jpg", "--size", "30x20").refuses(2, "--size", "prints");
        by("o.jpg", "--at-most", "much").refuses(2, "--at-most", "800kB");
        by("o.jpg", "--at-most", "2kB").refuses(2, "--at-most", "--long-edge");
        by("o.jpg", "--place", "here").refuses(2, "--place");
        by("o.jpg", "--proof-picture", "x.jpg").refuses(2, "--proof");
        by("o.pdf").refuses(2, "--edition", "--contact");
        by("o.pdf", "--contact", "--lesson").refuses(2, "--contact");
        by("o.tif", "--contact").refuses(2, "OUT.pdf");
        by("o.pdf", "--edition", out.resolve("e.json").toString()).refuses(2, "--size", "--paper");
        by("o.gif").refuses(2, ".tif");
        Path text = Files.writeString(folder.resolve("text.icc"), "no profile");
        by("o.tif", "--profile", text.toString()).refuses(3, "text.icc", "profile");
        by("o.tif", "--profile", folder.resolve("gone.icc").toString()).refuses(3, "gone.icc", "does not exist");
        Path other =
                Files.writeString(folder.resolve("other.json"), "{\"schema\":\"camera/1\"}", StandardCharsets.UTF_8);
        by("o.pdf", "--lesson", "--wish", other.toString()).refuses(3, "other.json", "camera/1");
        Path broken = Files.writeString(folder.resolve("broken.json"), "{\"schema\":\"wish/1\"}");
        by("o.pdf", "--lesson", "--wish", broken.toString()).refuses(3, "broken.json");
        Said.by("write", input.toString(), "-o", input.toString()).refuses(2, "scene.tif", "originals");
        try (Stream<Path> left = Files.list(out)) {
            assertThat(left).isEmpty();
        }
    }
}
