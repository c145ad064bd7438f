package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A result and its record: what it says, and that the same comes out again. */
class AgainCommandTest {

    private static final int FRAMES = 6;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @BeforeEach
    void burst() throws Exception {
        Files.createDirectories(folder.resolve("burst"));
        Files.createDirectories(folder.resolve("made"));
        for (int k = 0; k < FRAMES; k++) {
            TestFrames.write(folder.resolve("burst"), k, 96, 64);
        }
    }

    private Path stacked(String... more) {
        Path out = folder.resolve("made/sea.tif");
        String[] command = new String[4 + more.length];
        command[0] = "stack";
        command[1] = folder.resolve("burst").toString();
        command[2] = "-o";
        command[3] = out.toString();
        System.arraycopy(more, 0, command, 4, more.length);
        assertThat(Said.by(command).code()).isZero();
        return out;
    }

    private JsonObject again(int code, Path record, String... more) {
        String[] command = new String[3 + more.length];
        command[0] = "again";
        command[1] = record.toString();
        command[2] = "--json";
        System.arraycopy(more, 0, command, 3, more.length);
        Said said = Said.by(command);
        assertThat(said.code()).as(said.err()).isEqualTo(code);
        return Asked.parse(said.out());
    }

    /** SHA-256 by the JDK's digest alone, written as sha256sum writes it. */
    private static String sha256(Path file) throws Exception {
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
        return String.format("%064x", new BigInteger(1, digest));
    }

    @Test
    void theRecordNamesCommandOptionsAndEverySource() throws Exception {
        Path out = stacked("--as", "brightest", "--linear");
        JsonObject record = Asked.parse(Files.readString(folder.resolve("made/sea.tif.json")));
        assertThat(record.getString("schema")).isEqualTo("made/1");
        assertThat(record.getString("command")).isEqualTo("stack");
        assertThat(record.getArray("options")).containsExactlyInAnyOrder("--as=brightest", "--linear=true");
        List<JsonObject> sources = Asked.rows(record.getArray("sources"));
        assertThat(sources).hasSize(FRAMES);
        Path first = folder.resolve("burst/f100.jpg");
        assertThat(sources.get(0).getString("path")).isEqualTo("../burst/f100.jpg");
        assertThat(sources.get(0).getLong("bytes")).isEqualTo(Files.size(first));
        assertThat(sources.get(0).getString("sha256")).isEqualTo(sha256(first));
        assertThat(record.getObject("result").getString("sha256")).isEqualTo(sha256(out));
        assertThat(record.getObject("answer").getInt("frames")).isEqualTo(FRAMES);
    }

    @Test
    void theSameComesOutAgainAndWhatIsThereIsLeft() throws Exception {
        Path out = stacked("--as", "median");
        JsonObject same = again(0, folder.resolve("made/sea.tif.json"));
        assertThat(same.getBoolean("identical")).isTrue();
        assertThat(same.getBoolean("written")).isFalse();
        byte[] bytes = Files.readAllBytes(out);
        Files.delete(out);
        assertThat(again(0, out).getBoolean("written")).isTrue();
        assertThat(out).hasBinaryContent(bytes);
    }

    @Test
    void darksAndWhatLiesInAFolderLaterDoNotMatter() throws Exception {
        Files.createDirectories(folder.resolve("dark"));
        TestFrames.write(folder.resolve("dark"), 9, 96, 64);
        stacked("--darks", folder.resolve("dark").toString());
        TestFrames.write(folder.resolve("burst"), 40, 96, 64);
        Path record = folder.resolve("made/sea.tif.json");
        assertThat(again(0, record).getBoolean("identical")).isTrue();
        TestFrames.write(folder.resolve("dark"), 10, 96, 64);
        JsonObject more = again(4, record);
        assertThat(more.getArray("troubles").getObject(0).getString("file")).endsWith("f110.jpg");
    }

    @Test
    void theWholeFolderCanBeMoved() throws Exception {
        stacked();
        Path elsewhere = folder.resolve("moved");
        Files.createDirectories(elsewhere);
        Files.move(folder.resolve("burst"), elsewhere.resolve("burst"));
        Files.move(folder.resolve("made"), elsewhere.resolve("made"));
        assertThat(again(0, elsewhere.resolve("made/sea.tif.json")).getBoolean("identical"))
                .isTrue();
    }

    @Test
    void aChangedSourceIsNamedAndNothingIsWrittenUnlessAsked() throws Exception {
        Path out = stacked();
        byte[] before = Files.readAllBytes(out);
        Files.copy(folder.resolve("burst/f101.jpg"), folder.resolve("kept.jpg"));
        Files.delete(folder.resolve("burst/f102.jpg"));
        Files.move(folder.resolve("kept.jpg"), folder.resolve("burst/f102.jpg"));
        JsonObject changed = again(4, out);
        assertThat(changed.getBoolean("identical")).isFalse();
        JsonObject trouble = changed.getArray("troubles").getObject(0);
        assertThat(trouble.getString("file")).endsWith("f102.jpg");
        assertThat(trouble.getString("reason")).isEqualTo("has changed since");
        assertThat(out).hasBinaryContent(before);
        Path other = folder.resolve("made/other.tif");
        JsonObject asked = again(0, out, "-o", other.toString());
        assertThat(asked.getBoolean("identical")).isFalse();
        assertThat(other).exists();
        assertThat(again(0, other).getBoolean("identical")).isTrue();
    }

    @Test
    void aMissingSourceIsNamed() throws Exception {
        Path out = stacked();
        Files.delete(folder.resolve("burst/f103.jpg"));
        JsonObject gone = again(3, out);
        assertThat(gone.getBoolean("identical")).isFalse();
        assertThat(gone.getArray("troubles").getObject(0).getString("reason")).isEqualTo("is missing");
    }

    @Test
    void aResultThatWasChangedSinceIsLeftAsItIs() throws Exception {
        Path out = stacked();
        Files.writeString(out, "mine");
        JsonObject same = again(0, out);
        assertThat(same.getBoolean("identical")).isTrue();
        assertThat(same.getBoolean("untouched")).isFalse();
        assertThat(out).hasContent("mine");
    }

    @Test
    void whatIsNoRecordIsSaid() throws Exception {
        Path other = folder.resolve("other.json");
        Files.writeString(other, "{\"schema\":\"strokes/1\"}");
        Said.by("again", other.toString()).refuses(3, "other.json", "made/1");
        Files.writeString(other, "{\"schema\":\"made/1\",\"sources\":[7]}");
        Said.by("again", other.toString()).refuses(3, "other.json");
        Files.writeString(
                other,
                "{\"schema\":\"made/1\",\"program\":\"p\",\"command\":\"outing\",\"options\":[],\"documents\":{},"
                        + "\"folders\":{},\"sources\":[],\"result\":{\"path\":\"x.tif\",\"bytes\":1,\"sha256\":\"00\"}}");
        Said.by("again", other.toString()).refuses(2, "outing", "no command that makes a picture");
        Said.by("again", folder.resolve("none.tif").toString()).refuses(3, "none.tif.json", "does not exist");
    }

    @Test
    void aFileOfYoursIsNeverWrittenOverByARecord() throws Exception {
        Path mine = folder.resolve("made/sea.tif.json");
        Files.writeString(mine, "{\"schema\":\"strokes/1\",\"strokes\":[]}");
        Said.by(
                        "stack",
                        folder.resolve("burst").toString(),
                        "-o",
                        folder.resolve("made/sea.tif").toString())
                .refuses(2, "sea.tif.json", "choose another name");
        assertThat(folder.resolve("made/sea.tif")).doesNotExist();
    }
}
