package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Written pictures read back by ExifTool, libtiff, ImageMagick and the JDK: fields, pixels, and nothing amiss. */
class WrittenPictureReferenceTest {

    private static final int WIDTH = 517;
    private static final int HEIGHT = 203; // more than one strip, the last one short
    /** A flat top, more than one strip: flat strips are coded otherwise than noise. */
    private static final int FLAT_ROWS = 90;

    private static final int FLAT_CODE = 40_000;

    private static final PictureFacts FACTS = new PictureFacts(
            OptionalDouble.of(12.5),
            OptionalDouble.of(11.3137),
            OptionalDouble.of(100),
            OptionalDouble.of(24),
            Optional.of(LocalDateTime.of(2026, 5, 1, 21, 30, 5, 250_000_000)),
            4,
            List.of(Path.of("ANV_0471.jpg"), Path.of("a & <b>.jpg")),
            "Stack of 4 frames");

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private CodedPicture picture = CodedPicture.srgb8(1, 1, new byte[3]);
    private Path tiff = Path.of("");
    private Path jpeg = Path.of("");

    @BeforeEach
    void writeBoth() throws Exception {
        int[] codes = TestPictures.random(3 * WIDTH * HEIGHT, 65535, 4);
        short[] data = new short[codes.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (short) (i < 3 * WIDTH * FLAT_ROWS ? FLAT_CODE : codes[i]);
        }
        picture = new CodedPicture(WIDTH, HEIGHT, data, IccProfile.srgb());
        tiff = folder.resolve("out.tif");
        jpeg = folder.resolve("out.jpg");
        TiffWriter.write(tiff, picture, FACTS, Work.alone());
        JpegWriter.write(jpeg, picture, FACTS);
    }

    /** Values as Exif 2.32 prescribes them; -validate lists every breach of the standard that ExifTool knows. */
    @Test
    void exifToolReadsEveryField() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        for (Path file : List.of(tiff, jpeg)) {
            String told = OtherProgram.output(
                    "exiftool",
                    "-s",
                    "-n",
                    "-ImageWidth",
                    "-ImageHeight",
                    "-EXIF:ExposureTime",
                    "-EXIF:FNumber",
                    "-EXIF:ISO",
                    "-EXIF:FocalLength",
                    "-EXIF:DateTimeOriginal",
                    "-EXIF:SubSecTimeOriginal",
                    "-IFD0:Orientation",
                    "-EXIF:ColorSpace",
                    "-XMP:FrameCount",
                    "-XMP:IngredientsFilePath",
                    "-XMP:Description",
                    "-ICC_Profile:ProfileDescription",
                    file.toString());
            assertThat(told.replaceAll(" +: ", "="))
                    .contains("ImageWidth=517")
                    .contains("ImageHeight=203")
                    .contains("ExposureTime=12.5")
                    .contains("FNumber=11.3137")
                    .contains("ISO=100")
                    .contains("FocalLength=24")
                    .contains("DateTimeOriginal=2026:05:01 21:30:05")
                    .contains("SubSecTimeOriginal=25")
                    .contains("Orientation=1")
                    .contains("ColorSpace=1")
                    .contains("FrameCount=4")
                    .contains("IngredientsFilePath=ANV_0471.jpg, a & <b>.jpg")
                    .contains("Description=Stack of 4 frames")
                    .contains("sRGB");
            String[] amiss = OtherProgram.output(
                            "exiftool", "-s3", "-validate", "-warning", "-error", "-a", file.toString())
                    .strip()
                    .split("\n");
            if (file.equals(jpeg)) {
                assertThat(amiss).containsExactly("OK");
            } else {
                // Exif knows no Deflate; TIFF does (Technical Note 3), and every reader of TIFF.
                assertThat(amiss).hasSize(2).contains("Invalid value for IFD0 tag 0x0103 Compression");
            }
        }
    }

    @Test
    void libtiffReadsTheTiffWithoutAWord() throws Exception {
        OtherProgram.need("tiffinfo", "tiffinfo", tiff.toString());
        // -D decodes every strip
        String told = OtherProgram.output("tiffinfo", "-D", tiff.toString());
        assertThat(told)
                .contains("Image Width: 517 Image Length: 203")
                .contains("Bits/Sample: 16")
                .contains("Samples/Pixel: 3")
                .contains("Compression Scheme: AdobeDeflate")
                .contains("Predictor: horizontal differencing")
                .contains("ICC Profile: <present>");
        assertThat(told.toLowerCase(Locale.ROOT)).doesNotContain("warning").doesNotContain("error");
    }

    @Test
    void imageMagickSeesTheSamePixels() throws Exception {
        OtherProgram.need("ImageMagick", "convert", "-version");
        Path raw = folder.resolve("out.rgb");
        String said = OtherProgram.output("convert", tiff.toString(), "-depth", "16", "-endian", "LSB", "rgb:" + raw);
        assertThat(said).isEmpty();
        byte[] bytes = Files.readAllBytes(raw);
        assertThat(bytes).hasSize(6 * WIDTH * HEIGHT);
        for (int i = 0; i < 3 * WIDTH * HEIGHT; i++) {
            assertThat((bytes[2 * i] & 0xFF) | (bytes[2 * i + 1] & 0xFF) << 8).isEqualTo(picture.code(i));
        }
    }

    @Test
    void theWrittenTimeIsReadBack() throws Exception {
        for (Path file : List.of(tiff, jpeg)) {
            FrameFacts facts = ReadableFile.facts(file);
            assertThat(facts.taken()).isEqualTo(FACTS.taken());
            assertThat(facts.exposureSeconds()).isEqualTo(FACTS.exposureSeconds());
        }
    }

    /** The mean of many dithered pixels is the 16-bit value: no step between neighbouring levels is lost. */
    @Test
    void eightBitsDoNotBand() throws Exception {
        int size = 256;
        short[] flat = new short[3 * size * size];
        int code = 100 * 257 + 77; // a third of the way from one 8-bit level to the next
        Arrays.fill(flat, (short) code);
        Path file = folder.resolve("flat.jpg");
        JpegWriter.write(file, new CodedPicture(size, size, flat, IccProfile.srgb()), FACTS);
        BufferedImage read = ImageIO.read(file.toFile());
        double sum = 0;
        for (int p = 0; p < size * size; p++) {
            sum += read.getRGB(p % size, p / size) >> 8 & 0xFF;
        }
        // The DC step of a JPEG of this quality is a quarter of a code: means of blocks are off by half of it at most.
        assertThat(sum / (size * size)).isCloseTo(code / 257.0, within(0.13));
    }
}
