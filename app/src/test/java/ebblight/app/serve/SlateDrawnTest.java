package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.zxing.ChecksumException;
import com.google.zxing.FormatException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.DecoderResult;
import com.google.zxing.qrcode.decoder.Decoder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The code that the page draws, read by a reader that is not ours (ZXing's): every version, with signs beyond ASCII. */
class SlateDrawnTest {

    private static final int VERSIONS = 20;

    private static String node(String script) throws IOException, InterruptedException {
        Process node;
        try {
            node = new ProcessBuilder("node", "--input-type=module", "-e", script)
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
        } catch (IOException e) {
            assumeTrue(false, "no node here (Debian: nodejs)");
            throw e;
        }
        String told = new String(node.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(node.waitFor()).isZero();
        return told;
    }

    private static String web(String name) {
        return Path.of(System.getProperty("ebblight.root"), "app/src/main/resources/ebblight/app/web", name)
                .toUri()
                .toString();
    }

    private static DecoderResult read(List<String> rows) throws FormatException, ChecksumException {
        BitMatrix matrix = new BitMatrix(rows.size());
        for (int y = 0; y < rows.size(); y++) {
            for (int x = 0; x < rows.size(); x++) {
                if (rows.get(y).charAt(x) == '1') {
                    matrix.set(x, y);
                }
            }
        }
        return new Decoder().decode(matrix);
    }

    @Test
    void everyVersionIsReadWhole() throws Exception {
        // one text for each version: lengths grow until the next version is needed
        String told = node("import { modules } from '" + web("logic/qr.js") + "';\n"
                + "const seen = new Set();\n"
                + "for (let n = 1; modules('å'.repeat(n)) || n < 9; n++) {\n"
                + "  const rows = modules('å'.repeat(n));\n"
                + "  if (!seen.has(rows.length)) { seen.add(rows.length);\n"
                + "    console.log([n, ...rows.map((row) => row.join(''))].join(' ')); }\n"
                + "}");
        List<String> codes = told.lines().toList();
        assertThat(codes).hasSize(VERSIONS);
        for (int i = 0; i < codes.size(); i++) {
            List<String> parts = List.of(codes.get(i).split(" "));
            List<String> rows = parts.subList(1, parts.size());
            // ISO/IEC 18004: version v has 17 + 4 v modules a side
            assertThat(rows).hasSize(17 + 4 * (i + 1));
            DecoderResult read = read(rows);
            assertThat(read.getText()).isEqualTo("å".repeat(Integer.parseInt(parts.get(0))));
            assertThat(read.getErrorsCorrected()).as("modules set wrong").isZero();
            assertThat(read.getECLevel()).isEqualTo("M");
        }
    }
}
