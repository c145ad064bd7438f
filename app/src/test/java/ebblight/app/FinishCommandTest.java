package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code finish} writes and prints, and what it refuses. */
class FinishCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path input = Path.of("");
    private Path out = Path.of("");

    @BeforeEach
    void writeTheScene() throws Exception {
        input = TestScene.write(folder.resolve("scene.tif"), 360, 240);
        out = Files.createDirectory(folder.resolve("out")).resolve("o.tif");
    }

    private Path finish(String json) throws Exception {
        return Files.writeString(folder.resolve("finish.json"), json);
    }

    private JsonObject run(Path with, String... more) {
        String[] command = new String[7 + more.length];
        String[] first = {"finish", input.toString(), "-o", out.toString(), "--json", "--with", with.toString()};
        System.arraycopy(first, 0, command, 0, 7);
        System.arraycopy(more, 0, command, 7, more.length);
        Said said = Said.by(command);
        assertThat(said.code()).as(said.err()).isZero();
        return Asked.parse(said.out());
    }

    @Test
    void everyStepIsToldAndTheSizeIsThatOfThePaper() throws Exception {
        JsonObject answer = run(
                finish(
                        """
                {"schema":"finish/1","level":1,"crop":{"paper":[40,30],"border":3},"exposure":0.5,
                 "tone":{"shadows":0.5,"lights":-0.5},"grade":3,"blackAndWhite":{"filter":{"hueDegrees":30,"factor":2}},
                 "toning":{"shadows":{"hueDegrees":70,"chroma":5}},"localContrast":0.3,"grain":1,
                 "sharpness":{"viewingCentimetres":50,"paper":"matt"}}"""));
        assertThat(answer.getString("schema")).isEqualTo("finish/1");
        assertThat(Path.of(answer.getString("file"))).isRegularFile();
        assertThat((double) answer.getInt("width") / answer.getInt("height")).isCloseTo(34.0 / 24, within(0.005));
        assertThat(answer.getDouble("pixelsPerInch")).isCloseTo(answer.getInt("width") / 34.0 * 2.54, within(1e-9));
        assertThat(answer.getArray("done")).hasSizeGreaterThanOrEqualTo(10);
        assertThat(answer.getArray("colours")).hasSize(2); // sky and shore
        try (Stream<Path> made = Files.list(folder.resolve("out"))) {
            assertThat(made).hasSize(2); // the picture and its record
        }
    }

    /** What --save writes makes the same picture again, bit for bit but for what the file says of itself. */
    @Test
    void aSavedFinishMakesTheSamePicture() throws Exception {
        Path saved = folder.resolve("out/saved.json");
        Path strip = folder.resolve("out/strip.jpg");
        JsonObject first = run(
                finish("{\"schema\":\"finish/1\",\"blackAndWhite\":{}}"),
                "--save",
                saved.toString(),
                "--strip",
                strip.toString());
        assertThat(first.getObject("strip").getArray("grades")).containsExactly(1.0, 1.5, 2.0, 2.5, 3.0);
        assertThat(strip).isRegularFile();
        byte[] before = Files.readAllBytes(out);
        JsonObject again = run(saved);
        assertThat(again.getArray("colours").getObject(0).getDouble("stops"))
                .isEqualTo(first.getArray("colours").getObject(0).getDouble("stops"));
        run(saved);
        assertThat(Files.readAllBytes(out)).hasSizeBetween(before.length - 2000, before.length + 2000);
    }

    @Test
    void theSameAgainIsTheSameFile() throws Exception {
        Path with = finish("{\"schema\":\"finish/1\",\"exposure\":0.3,\"grade\":3,\"grain\":1}");
        run(with);
        byte[] before = Files.readAllBytes(out);
        run(with);
        assertThat(Files.readAllBytes(out)).isEqualTo(before);
        Said again = Said.by("again", out.toString(), "--json");
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(Asked.parse(again.out()).getBoolean("identical")).isTrue();
    }

    @Test
    void partsHaveTonesOfTheirOwnByTheFramesOfTheView() throws Exception {
        Path burst = Files.createDirectories(folder.resolve("burst"));
        for (int k = 0; k < 12; k++) {
            TestFrames.write(burst, k, 360, 240);
        }
        Path with = finish("{\"schema\":\"finish/1\",\"parts\":[{\"region\":\"rest\",\"stops\":-0.5}]}");
        Said.by("finish", input.toString(), "-o", out.toString(), "--with", with.toString())
                .refuses(2, "--frames", "tell where the parts lie");
        JsonObject answer = run(with, "--frames", burst.toString());
        assertThat(answer.getArray("done")).containsExactly("rest 0.50 stop darker");
        Said again = Said.by("again", out.toString(), "--json");
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(Asked.parse(again.out()).getBoolean("identical")).isTrue();
        Path other = TestScene.write(folder.resolve("other.tif"), 240, 240);
        String name = out.resolveSibling("p.tif").toString();
        String told = burst.toString();
        Said.by("finish", other.toString(), "-o", name, "--with", with.toString(), "--frames", told)
                .refuses(3, "another shape", "name the frames it was made of");
        Path unknown = finish("{\"schema\":\"finish/1\",\"parts\":[{\"region\":\"boat\",\"stops\":1}]}");
        Said.by("finish", input.toString(), "-o", name, "--with", unknown.toString(), "--frames", told)
                .refuses(3, "boat", "known are");
    }

    @Test
    void whatCannotBeMeantIsNamed() throws Exception {
        String[][] wrong = {
            {"{\"schema\":\"finish/1\",\"grade\":7}", "grade", "between"},
            {"{\"schema\":\"finish/1\",\"exposure\":\"bright\"}", "exposure", "number"},
            {"{\"schema\":\"finish/1\",\"contrast\":3}", "contrast", "no part of a finish"},
            {"{\"schema\":\"finish/2\"}", "schema", "finish/1"},
            {"{\"schema\":\"finish/1\",\"crop\":{\"paper\":[40]}}", "crop.paper", "centimetres"},
            {"{\"schema\":\"finish/1\",\"crop\":{\"left\":0.9,\"right\":0.1}}", "crop", "left"},
            {"{\"schema\":\"finish/1\",\"tone\":{\"shadows\":3}}", "tone", "1.5"},
            {"{\"schema\":\"finish/1\",\"sharpness\":{\"viewingCentimetres\":60}}", "sharpness", "printWidthCentimetres"
            },
            {
                "{\"schema\":\"finish/1\",\"blackAndWhite\":{\"filter\":{\"hueDegrees\":0,\"factor\":60}}}",
                "factor",
                "at most"
            },
            {
                "{\"schema\":\"finish/1\",\"sharpness\":{\"viewingCentimetres\":60,\"paper\":\"rough\"}}",
                "paper",
                "cotton"
            },
            {"{\"schema\":\"finish/1\",\"parts\":[{\"region\":\"water\",\"stops\":4}]}", "parts[0].stops", "between"},
            {"[1,2]", "finish.json", "JSON object"},
            {"{\"schema\":", "finish.json", "JSON object"}
        };
        for (String[] each : wrong) {
            Path with = finish(each[0]);
            String strip = folder.resolve("out/strip.jpg").toString();
            Said.by("finish", input.toString(), "-o", out.toString(), "--with", with.toString(), "--strip", strip)
                    .refuses(3, "finish.json", each[1], each[2]);
        }
        nothingIsLeft();
    }

    @Test
    void whatCannotBeReadOrWrittenIsNamed() throws Exception {
        Path text = Files.writeString(folder.resolve("text.tif"), "no picture");
        Path empty = Files.createFile(folder.resolve("empty.jpg"));
        byte[] whole = Files.readAllBytes(input);
        Path cut = Files.write(folder.resolve("cut.tif"), Arrays.copyOf(whole, 200));
        Said.by("finish", text.toString(), "-o", out.toString()).refuses(3, "text.tif");
        Said.by("finish", empty.toString(), "-o", out.toString()).refuses(3, "empty.jpg", "empty");
        Said.by("finish", cut.toString(), "-o", out.toString()).refuses(3, "cut.tif");
        Said.by("finish", folder.resolve("gone.tif").toString(), "-o", out.toString())
                .refuses(3, "gone.tif");
        Said.by("finish", folder.toString(), "-o", out.toString()).refuses(3, folder.toString());
        Said.by("finish", input.toString(), "-o", input.toString()).refuses(2, "scene.tif", "originals");
        Said.by("finish", input.toString(), "-o", folder.resolve("o.gif").toString())
                .refuses(2, ".tif");
        Said.by(
                        "finish",
                        input.toString(),
                        "-o",
                        out.toString(),
                        "--with",
                        folder.resolve("no.json").toString())
                .refuses(3, "no.json", "does not exist");
        assertThat(Files.readAllBytes(input)).isEqualTo(whole);
        nothingIsLeft();
    }

    private void nothingIsLeft() throws Exception {
        try (Stream<Path> left = Files.list(folder.resolve("out"))) {
            assertThat(left).isEmpty();
        }
    }
}
