package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real RAW files go into results as the sensor's light, not as the smaller picture inside. */
class RawInputsTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /**
     * The picture inside has 2272 × 1704 pixels (exiftool's ImageWidth and ImageHeight), the sensor's light 2312 × 1720 (the
     * TIFF of LibRaw's dcraw_emu).
     */
    @Test
    void aBlendHasTheSensorsSize() throws Exception {
        Path raw = Path.of(System.getProperty("ebblight.shared", "")).resolve("data/raw");
        assumeTrue(Files.isDirectory(raw), "the RAW files of ../shared/data are not here");
        Path parts = folder.resolve("parts.json");
        Files.writeString(parts, "{\"schema\":\"blend/1\",\"parts\":[{\"region\":\"rest\",\"time\":\"2s\"}]}");
        Said said = Said.by(
                "blend",
                raw.resolve("CRW_0101.CRW").toString(),
                raw.resolve("CRW_0304.CRW").toString(),
                "--fps=1",
                "--parts=" + parts,
                "-o=" + folder.resolve("blend.tif"),
                "--json");
        assumeTrue(!said.err().contains("LibRaw is not"), "LibRaw is not installed");
        assertThat(said.code()).as(said.err()).isZero();
        JsonObject answer = Asked.parse(said.out());
        assertThat(answer.getInt("width")).isEqualTo(2312);
        assertThat(answer.getInt("height")).isEqualTo(1720);
    }
}
