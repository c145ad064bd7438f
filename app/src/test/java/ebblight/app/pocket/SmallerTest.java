package ebblight.app.pocket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ebblight.app.serve.WebFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.LZMAOutputStream;

/** What the page's own code makes of LZMA: the bytes that XZ for Java packed, however it was told to. */
class SmallerTest {

    /** Takes packed bytes as base64 lines, gives back what they were. */
    private static final String UNDO =
            """
            const lines = require('fs').readFileSync(0, 'utf8').trim().split('\\n');
            console.log(lines.map((one) => Buffer.from(unlzma(new Uint8Array(Buffer.from(one, 'base64')))).toString('base64')).join('\\n'));
            """;

    static Stream<byte[]> bytes() {
        SplittableRandom dice = new SplittableRandom(3);
        byte[] noise = new byte[40_000];
        dice.nextBytes(noise);
        byte[] flat = new byte[100_000];
        byte[] mixed = new byte[300_000];
        for (int i = 0; i < mixed.length; i++) {
            // near and far repeats, some broken by a sign
            mixed[i] = i > 1000 && dice.nextInt(9) > 0
                    ? mixed[i - 1 - (dice.nextInt(40) == 0 ? dice.nextInt(1000) : 16)]
                    : (byte) dice.nextInt(60);
        }
        byte[] words = "the tide turns, the wind does not; ".repeat(900).getBytes(StandardCharsets.UTF_8);
        return Stream.of(noise, flat, mixed, words, new byte[] {7}, new byte[0]);
    }

    private static byte[] packed(byte[] bytes, int lc, int lp, int pb) throws IOException {
        LZMA2Options options = new LZMA2Options(LZMA2Options.PRESET_DEFAULT);
        options.setLcLp(lc, lp);
        options.setPb(pb);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (LZMAOutputStream lzma = new LZMAOutputStream(out, options, bytes.length)) {
            lzma.write(bytes);
        }
        return out.toByteArray();
    }

    private static List<String> undone(List<byte[]> packed) throws IOException, InterruptedException {
        String code = new String(WebFiles.bytes("pocket/lzma.js"), StandardCharsets.UTF_8) + UNDO;
        Process node;
        try {
            node = new ProcessBuilder("node", "-e", code).start();
        } catch (IOException e) {
            assumeTrue(false, "no node here (Debian: nodejs)");
            throw e;
        }
        try (OutputStream in = node.getOutputStream()) {
            for (byte[] each : packed) {
                in.write((Base64.getEncoder().encodeToString(each) + "\n").getBytes(StandardCharsets.US_ASCII));
            }
        }
        String told = new String(node.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        assertThat(node.waitFor()).isZero();
        return List.of(told.substring(0, told.length() - 1).split("\n", -1));
    }

    @ParameterizedTest(name = "{index}")
    @MethodSource("bytes")
    void thePageUndoesWhatWasPacked(byte[] bytes) throws Exception {
        List<byte[]> packed =
                List.of(Smaller.lzma(bytes), packed(bytes, 3, 0, 2), packed(bytes, 0, 2, 1), packed(bytes, 4, 0, 4));
        assertThat(undone(packed))
                .hasSize(packed.size())
                .containsOnly(Base64.getEncoder().encodeToString(bytes));
    }
}
