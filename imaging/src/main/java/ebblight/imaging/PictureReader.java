package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_ANYDEPTH;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_COLOR;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_COLOR_RGB;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_REDUCED_COLOR_2;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imdecode;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGR2RGB;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import ebblight.imaging.raw.RawDeveloper;
import ebblight.imaging.raw.RawException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/** Reads single pictures: JPEG, PNG, TIFF in 8 or 16 bits, and RAW by its embedded JPEG or developed by LibRaw. */
final class PictureReader {

    static final Set<String> PICTURES = Set.of("jpg", "jpeg", "png", "tif", "tiff");
    static final Set<String> RAWS = Set.of(
            "crw", "cr2", "cr3", "nef", "nrw", "arw", "dng", "raf", "orf", "rw2", "pef", "kdc", "dcr", "srw", "3fr",
            "iiq", "rwl", "x3f", "erf", "mrw");

    private PictureReader() {}

    static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    }

    static boolean reads(Path file) {
        return PICTURES.contains(ending(file)) || RAWS.contains(ending(file));
    }

    /** Decodes a picture into memory of its own; of a RAW file the embedded JPEG. */
    static PackedFrame decode(Path file, byte[] bytes) throws UnreadableInputException {
        return decode(file, bytes, RawAs.EMBEDDED);
    }

    static PackedFrame decode(Path file, byte[] bytes, RawAs rawAs) throws UnreadableInputException {
        try (Mat memory = new Mat()) {
            return decode(file, bytes, rawAs, memory).ofItsOwn();
        }
    }

    /**
     * Decodes a picture, turned upright as its orientation tag asks.
     *
     * @param memory takes the samples, reusing what it has where the size fits; the frame lies over it and must not be
     *     read once it is closed, or given back because nobody holds it
     */
    static PackedFrame decode(Path file, byte[] bytes, RawAs rawAs, Mat memory) throws UnreadableInputException {
        if (!isRaw(file)) {
            return decoded(file, bytes, false, memory, Long.MAX_VALUE);
        }
        Optional<byte[]> jpeg = rawAs == RawAs.EMBEDDED ? EmbeddedJpeg.largest(bytes) : Optional.empty();
        return jpeg.isPresent()
                ? decoded(file, jpeg.get(), true, memory, Long.MAX_VALUE)
                : developed(file, bytes, memory);
    }

    /**
     * Decodes a picture as {@link #decode} does, of a RAW file the embedded JPEG; a JPEG of more than {@code mostPixels} at
     * half its width and height, by the scaling of its transform, which skips half of the work.
     */
    static PackedFrame decodeSmaller(Path file, byte[] bytes, Mat memory, long mostPixels)
            throws UnreadableInputException {
        Optional<byte[]> jpeg = isRaw(file) ? EmbeddedJpeg.largest(bytes) : Optional.of(bytes);
        return jpeg.isPresent()
                ? decoded(file, jpeg.get(), isRaw(file), memory, mostPixels)
                : developed(file, bytes, memory);
    }

    /** Whether the name of a file promises a sensor's own data. */
    static boolean isRaw(Path file) {
        return RAWS.contains(ending(file));
    }

    private static PackedFrame developed(Path file, byte[] bytes, Mat memory) throws UnreadableInputException {
        try {
            RawDeveloper.shared().develop(bytes, (width, height) -> {
                memory.create(height, width, opencv_core.CV_16UC3);
                return samples(memory);
            });
        } catch (RawException e) {
            throw new UnreadableInputException(file, String.valueOf(e.getMessage()));
        }
        IccProfile profile = IccProfile.proPhoto().with(TransferCurve.LINEAR);
        return new PackedFrame(memory.cols(), memory.rows(), 16, samples(memory), profile);
    }

    private static ByteBuffer samples(Mat memory) {
        long size = memory.elemSize() * memory.cols() * memory.rows();
        return memory.data().capacity(size).asByteBuffer();
    }

    private static PackedFrame decoded(Path file, byte[] coded, boolean raw, Mat memory, long mostPixels)
            throws UnreadableInputException {
        if (isJpeg(coded) && !raw && cutOff(coded)) {
            throw new UnreadableInputException(file, "is cut off: the end of the JPEG is missing");
        }
        IccProfile profile = IccBytes.of(coded).flatMap(IccProfile::read).orElseGet(IccProfile::srgb);
        // OpenCV 4.13 fills 16-bit TIFF with garbage when asked for red first; JPEG comes red first at no cost.
        boolean smaller = isJpeg(coded) && EmbeddedJpeg.pixels(coded) > mostPixels;
        boolean redFirst = isJpeg(coded) && !smaller;
        int colour = smaller ? IMREAD_REDUCED_COLOR_2 : redFirst ? IMREAD_COLOR_RGB : IMREAD_COLOR;
        try (BytePointer pointer = new BytePointer(coded);
                Mat packed = new Mat(1, coded.length, opencv_core.CV_8UC1, pointer);
                Mat decoded = imdecode(packed, IMREAD_ANYDEPTH | colour, memory)) {
            if (decoded.empty()) { // and the memory still holds the picture before
                throw new UnreadableInputException(
                        file,
                        begins(coded)
                                ? "cannot be decoded: it is damaged, cut off or of a rare kind"
                                : "is not a picture that can be decoded (JPEG, PNG or TIFF expected)");
            }
            if (!redFirst) {
                cvtColor(memory, memory, COLOR_BGR2RGB);
            }
        } catch (RuntimeException e) {
            throw new UnreadableInputException(file, "could not be decoded: " + firstLine(e));
        }
        if (memory.depth() != opencv_core.CV_8U && memory.depth() != opencv_core.CV_16U) {
            throw new UnreadableInputException(file, "holds neither 8 nor 16 bits a sample");
        }
        int bits = memory.depth() == opencv_core.CV_8U ? 8 : 16;
        return new PackedFrame(memory.cols(), memory.rows(), bits, samples(memory), profile);
    }

    private static String firstLine(RuntimeException e) {
        String message = String.valueOf(e.getMessage());
        int end = message.indexOf('\n');
        return end < 0 ? message : message.substring(0, end);
    }

    private static boolean isJpeg(byte[] bytes) {
        return bytes.length > 3 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xD8;
    }

    /** Whether a file begins like a JPEG, a PNG or a TIFF. */
    private static boolean begins(byte[] bytes) {
        boolean enough = bytes.length > 3;
        boolean png = enough && bytes[1] == 'P' && bytes[2] == 'N' && bytes[3] == 'G';
        boolean tiff = enough && bytes[0] == bytes[1] && (bytes[0] == 'I' || bytes[0] == 'M');
        return isJpeg(bytes) || png || tiff;
    }

    /**
     * Whether no end-of-image marker follows the last start-of-scan. In scan data 0xFF is followed by 0 or a restart
     * marker, so a marker found there is the end.
     */
    private static boolean cutOff(byte[] bytes) {
        for (int i = bytes.length - 2; i >= 0; i--) {
            if ((bytes[i] & 0xFF) == 0xFF) {
                int marker = bytes[i + 1] & 0xFF;
                if (marker == 0xD9) {
                    return false;
                }
                if (marker == 0xDA) {
                    return true;
                }
            }
        }
        return true;
    }
}
