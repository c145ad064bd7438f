package ebblight.imaging.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.OtherProgram;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Proofs against LittleCMS as Pillow calls it, on the press profile that comes with Ghostscript. */
class SoftProofReferenceTest {

    private static final Path PRESS = Path.of("/usr/share/color/icc/ghostscript/default_cmyk.icc");
    private static final int SIDE = 6;

    private static final String PROOF =
            """
            import sys
            from PIL import Image, ImageCms
            srgb = ImageCms.getOpenProfile(sys.argv[1])
            press = ImageCms.getOpenProfile(sys.argv[2])
            codes = open(sys.argv[3], 'rb').read()
            n = len(codes) // 3
            image = Image.frombytes('RGB', (n, 1), codes)
            relative = ImageCms.Intent.RELATIVE_COLORIMETRIC
            proof = ImageCms.buildProofTransform(srgb, srgb, press, 'RGB', 'RGB',
                renderingIntent=relative, proofRenderingIntent=relative, flags=0x4100)
            open(sys.argv[4], 'wb').write(ImageCms.applyTransform(image, proof).tobytes())
            """;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private byte[] press = new byte[0];

    @BeforeEach
    void readThePress() throws Exception {
        Assumptions.assumeTrue(Files.exists(PRESS), "no profile at " + PRESS);
        press = Files.readAllBytes(PRESS);
    }

    /** A cube of colours, and greys. */
    private static byte[] patches() {
        int n = SIDE * SIDE * SIDE;
        byte[] codes = new byte[3 * n];
        for (int p = 0; p < n; p++) {
            codes[3 * p] = (byte) (51 * (p % SIDE));
            codes[3 * p + 1] = (byte) (51 * (p / SIDE % SIDE));
            codes[3 * p + 2] = (byte) (51 * (p / SIDE / SIDE));
        }
        return codes;
    }

    @Test
    void theProofIsThatOfLittleCms() throws Exception {
        OtherProgram.need("Pillow", OtherProgram.PYTHON, "-c", "from PIL import ImageCms");
        byte[] codes = patches();
        Path srgb = Files.write(folder.resolve("srgb.icc"), IccProfile.srgb().bytes());
        Path in = Files.write(folder.resolve("in.rgb"), codes);
        Path out = folder.resolve("out.rgb");
        OtherProgram.python(folder, PROOF, srgb, PRESS, in, out);
        byte[] theirs = Files.readAllBytes(out);
        CodedPicture ours = SoftProof.of(
                        CodedPicture.srgb8(codes.length / 3, 1, codes),
                        PrinterProfile.read(press).orElseThrow(),
                        PrinterProfile.Intent.RELATIVE,
                        Work.alone())
                .picture(Work.alone());
        double worst = 0;
        for (int i = 0; i < codes.length; i++) {
            worst = Math.max(worst, Math.abs(ours.code(i) / 257.0 - (theirs[i] & 0xFF)));
        }
        // theirs is rounded to 8 bits three times on its way
        assertThat(worst).isLessThan(3);
    }

    /** A screen's profile proofed on itself moves nothing and joins nothing but what sRGB itself has at its foot. */
    @Test
    void aProfileOnItselfMovesNothing() {
        byte[] codes = patches();
        SoftProof proof = SoftProof.of(
                CodedPicture.srgb8(codes.length / 3, 1, codes),
                PrinterProfile.read(IccProfile.srgb().bytes()).orElseThrow(),
                PrinterProfile.Intent.PERCEPTUAL,
                Work.alone());
        assertThat(proof.movedFraction()).isZero();
        assertThat(proof.darkest()).isCloseTo(0, within(0.1));
        assertThat(proof.joinedSteps()).isEmpty();
    }

    /** The press has another table for each intent in this copy: all ink left out for the perceptual one. */
    @Test
    void theTableOfTheIntentIsTaken() {
        ByteBuffer b = ByteBuffer.wrap(press);
        int count = b.getInt(128);
        byte[] twice = press;
        for (int k = 0; k < count; k++) {
            int entry = 132 + 12 * k;
            if (new String(press, entry, 4, StandardCharsets.US_ASCII).equals("B2A0")) {
                int at = b.getInt(entry + 4);
                int length = b.getInt(entry + 8);
                twice = Arrays.copyOf(press, press.length + length);
                System.arraycopy(press, at, twice, press.length, length);
                // lut8 (ICC.1:2010, 10.9): after 48 bytes of head the input curves, the grid, the output curves
                assertThat(new String(press, at, 4, StandardCharsets.US_ASCII)).isEqualTo("mft1");
                int from = press.length + 48 + 3 * 256;
                Arrays.fill(twice, from, twice.length, (byte) 0);
                ByteBuffer.wrap(twice).putInt(entry + 4, press.length).putInt(0, twice.length);
            }
        }
        PrinterProfile printer = PrinterProfile.read(twice).orElseThrow();
        CodedPicture grey = CodedPicture.srgb8(1, 1, new byte[] {90, 90, 90});
        double perceptual = SoftProof.of(grey, printer, PrinterProfile.Intent.PERCEPTUAL, Work.alone())
                .light()
                .green()[0];
        double relative = SoftProof.of(grey, printer, PrinterProfile.Intent.RELATIVE, Work.alone())
                .light()
                .green()[0];
        assertThat(perceptual).isGreaterThan(0.95); // no ink: the white of the paper
        assertThat(relative).isBetween(0.08, 0.13); // 90 of 255 in sRGB is 10.2 % of the light
    }

    @Test
    void whatIsNoProfileIsRefused() {
        assertThat(PrinterProfile.read(new byte[300])).isEmpty();
        assertThat(PrinterProfile.read("no profile".getBytes(StandardCharsets.UTF_8)))
                .isEmpty();
        assertThat(PrinterProfile.read(Arrays.copyOf(press, 1000))).isEmpty();
    }
}
