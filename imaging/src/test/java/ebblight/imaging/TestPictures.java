package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;

/** Pictures for the tests; those without Exif are written by the JDK, not by us. */
final class TestPictures {

    private TestPictures() {}

    /** Random codes of 0 to {@code largest}. */
    static int[] random(int samples, int largest, long seed) {
        Random random = new Random(seed);
        int[] codes = new int[samples];
        for (int i = 0; i < samples; i++) {
            codes[i] = random.nextInt(largest + 1);
        }
        return codes;
    }

    /** Writes 8-bit codes of red, green, blue in the format that the name ends in. */
    static void write8(Path file, int[] codes, int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int p = 0; p < width * height; p++) {
            image.setRGB(p % width, p / width, codes[3 * p] << 16 | codes[3 * p + 1] << 8 | codes[3 * p + 2]);
        }
        write(file, image);
    }

    /** 8-bit codes of red, green, blue as the JDK reads them. */
    static int[] read8(Path file) throws IOException {
        BufferedImage image = ImageIO.read(file.toFile());
        int[] codes = new int[3 * image.getWidth() * image.getHeight()];
        for (int p = 0; p < codes.length / 3; p++) {
            int rgb = image.getRGB(p % image.getWidth(), p / image.getWidth());
            codes[3 * p] = rgb >> 16 & 0xFF;
            codes[3 * p + 1] = rgb >> 8 & 0xFF;
            codes[3 * p + 2] = rgb & 0xFF;
        }
        return codes;
    }

    /** Writes 16-bit codes of red, green, blue in the format that the name ends in. */
    static void write16(Path file, int[] codes, int width, int height) throws IOException {
        short[] data = new short[codes.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (short) codes[i];
        }
        WritableRaster raster = Raster.createInterleavedRaster(
                new DataBufferUShort(data, data.length), width, height, 3 * width, 3, new int[] {0, 1, 2}, null);
        ComponentColorModel model = new ComponentColorModel(
                ColorSpace.getInstance(ColorSpace.CS_sRGB), false, false, Transparency.OPAQUE, DataBuffer.TYPE_USHORT);
        write(file, new BufferedImage(model, raster, false, null));
    }

    private static void write(Path file, BufferedImage image) throws IOException {
        String name = file.toString();
        if (!ImageIO.write(image, name.substring(name.lastIndexOf('.') + 1), file.toFile())) {
            throw new IOException("the JDK does not write " + file);
        }
    }

    /** A picture of linear light with linear codes, and Exif that tells its exposure and when it was taken. */
    static void writeLinear(Path file, int[] codes, int width, int height, double exposureSeconds, LocalDateTime taken)
            throws IOException {
        short[] data = new short[codes.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (short) codes[i];
        }
        CodedPicture picture =
                new CodedPicture(width, height, data, IccProfile.srgb().linear());
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(exposureSeconds),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(taken),
                1,
                List.of(),
                "test frame");
        TiffWriter.write(file, picture, facts, Work.alone());
    }
}
