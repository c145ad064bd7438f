package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_QUALITY;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR_444;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imencode;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/** Writes JPEG in full colour resolution, dithered from 16 bits so that smooth skies do not band. */
public final class JpegWriter {

    /** Of pictures that need not be small. */
    public static final int STANDARD_QUALITY = 95;

    private static final int MOST_IN_SEGMENT = 65_000;

    private JpegWriter() {}

    /** Writes {@code picture} to {@code target}, whole or not at all. */
    public static void write(Path target, CodedPicture picture, PictureFacts facts) throws IOException {
        OutputFile.write(target, encode(picture, facts));
    }

    /** The bytes of the JPEG file. */
    public static byte[] encode(CodedPicture picture, PictureFacts facts) throws IOException {
        return encode(picture, facts, PictureNotes.NONE, STANDARD_QUALITY);
    }

    /** The same with what the photographer wants it to say, at a quality of 1 to 100. */
    public static byte[] encode(CodedPicture picture, PictureFacts facts, PictureNotes notes, int quality)
            throws IOException {
        return whole(picture, facts, notes, pixels(picture), quality);
    }

    /**
     * A JPEG of at most so many bytes.
     *
     * @param quality of 1 to 100; one more would be larger than asked, unless it is 100
     */
    public record Sized(byte[] bytes, int quality) {}

    /**
     * The best quality that fits; empty when none does.
     *
     * @param bytes at most
     */
    public static Optional<Sized> atMost(CodedPicture picture, PictureFacts facts, PictureNotes notes, long bytes)
            throws IOException {
        byte[] pixels = pixels(picture);
        int low = 0;
        int high = 101;
        byte[] best = new byte[0];
        while (high - low > 1) {
            int middle = (low + high) / 2;
            byte[] coded = whole(picture, facts, notes, pixels, middle);
            if (coded.length <= bytes) {
                low = middle;
                best = coded;
            } else {
                high = middle;
            }
        }
        return low == 0 ? Optional.empty() : Optional.of(new Sized(best, low));
    }

    /** 8-bit codes, blue first. */
    private static byte[] pixels(CodedPicture picture) {
        int count = picture.width() * picture.height();
        byte[] blueFirst = new byte[3 * count];
        for (int p = 0; p < count; p++) {
            int dither = Dither.of(p);
            for (int c = 0; c < 3; c++) {
                blueFirst[3 * p + 2 - c] = (byte) Dither.to8(picture.code(3 * p + c), dither);
            }
        }
        return blueFirst;
    }

    private static byte[] coded(byte[] blueFirst, int width, int height, int quality) throws IOException {
        try (BytePointer data = new BytePointer(blueFirst);
                Mat mat = new Mat(height, width, opencv_core.CV_8UC3, data);
                BytePointer out = new BytePointer();
                IntPointer options = new IntPointer(
                        IMWRITE_JPEG_QUALITY,
                        quality,
                        IMWRITE_JPEG_SAMPLING_FACTOR,
                        IMWRITE_JPEG_SAMPLING_FACTOR_444)) {
            if (!imencode(".jpg", mat, out, options)) {
                throw new IOException("the picture could not be coded as JPEG");
            }
            byte[] coded = new byte[(int) out.limit()];
            out.get(coded);
            return coded;
        }
    }

    private static byte[] whole(
            CodedPicture picture, PictureFacts facts, PictureNotes notes, byte[] blueFirst, int quality)
            throws IOException {
        byte[] coded = coded(blueFirst, picture.width(), picture.height(), quality);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(coded, 0, 2);
        segment(file, 0xE1, "Exif\0\0", ExifTags.block(facts, notes, picture));
        segment(file, 0xE1, "http://ns.adobe.com/xap/1.0/\0", XmpPacket.of(shortened(facts, notes), notes));
        byte[] profile = picture.profile().bytes();
        segment(file, 0xE2, "ICC_PROFILE\0\1\1", profile);
        byte[] said = IptcBlock.of(notes);
        if (said.length > 0) {
            segment(file, 0xED, "Photoshop 3.0\0", IptcBlock.resource(said));
        }
        file.write(coded, 2, coded.length - 2);
        return file.toByteArray();
    }

    /** So many sources as fit into one segment. */
    private static PictureFacts shortened(PictureFacts facts, PictureNotes notes) {
        int most = facts.sources().size();
        PictureFacts cut = facts;
        while (most > 0 && XmpPacket.of(cut, notes).length > MOST_IN_SEGMENT) {
            most /= 2;
            cut = new PictureFacts(
                    facts.exposureSeconds(),
                    facts.fNumber(),
                    facts.isoSpeed(),
                    facts.focalMillimetres(),
                    facts.taken(),
                    facts.frames(),
                    facts.sources().subList(0, most),
                    facts.description());
        }
        return cut;
    }

    private static void segment(ByteArrayOutputStream file, int marker, String head, byte[] body) throws IOException {
        byte[] name = head.getBytes(StandardCharsets.ISO_8859_1);
        int length = 2 + name.length + body.length;
        if (length > 65_535) {
            throw new IOException("a piece of metadata of " + body.length + " bytes does not fit into a JPEG");
        }
        file.write(0xFF);
        file.write(marker);
        file.write(length >> 8);
        file.write(length);
        file.writeBytes(name);
        file.writeBytes(body);
    }
}
