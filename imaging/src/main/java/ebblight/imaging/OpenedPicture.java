package ebblight.imaging;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;

/**
 * One picture of a card with what it says of itself: read once, by whom it is measured, and closed. Its rows are code
 * values; {@link #linear()} tells the light of each.
 */
public final class OpenedPicture implements AutoCloseable {

    private final Path file;
    private final FrameFacts facts;
    private final byte[] bytes;
    private final Mat memory;
    private final PackedFrame frame;

    private OpenedPicture(Path file, FrameFacts facts, byte[] bytes, Mat memory, PackedFrame frame) {
        this.file = file;
        this.facts = facts;
        this.bytes = bytes;
        this.memory = memory;
        this.frame = frame;
    }

    /** Reads and decodes a picture, upright; of a RAW file the largest JPEG in it. */
    public static OpenedPicture open(Path file) throws UnreadableInputException {
        return open(file, RawAs.EMBEDDED);
    }

    /** Reads and decodes a picture, upright. */
    public static OpenedPicture open(Path file, RawAs rawAs) throws UnreadableInputException {
        return open(file, (bytes, memory) -> PictureReader.decode(file, bytes, rawAs, memory));
    }

    /** As {@link #open(Path)}; a JPEG of more than {@code mostPixels} comes at half its width and height. */
    public static OpenedPicture openSmaller(Path file, long mostPixels) throws UnreadableInputException {
        return open(file, (bytes, memory) -> PictureReader.decodeSmaller(file, bytes, memory, mostPixels));
    }

    private interface Decoding {
        PackedFrame of(byte[] bytes, Mat memory) throws UnreadableInputException;
    }

    private static OpenedPicture open(Path file, Decoding decoding) throws UnreadableInputException {
        FrameFacts facts = ReadableFile.facts(file);
        byte[] bytes = ReadableFile.bytes(file);
        @Nullable Mat memory = new Mat();
        try {
            OpenedPicture opened = new OpenedPicture(file, facts, bytes, memory, decoding.of(bytes, memory));
            memory = null;
            return opened;
        } finally {
            if (memory != null) {
                memory.close();
            }
        }
    }

    /** Whether the name of a file promises the camera's own data, with a JPEG inside. */
    public static boolean isRaw(Path file) {
        return PictureReader.isRaw(file);
    }

    /** Why a file could not be read, without its name. */
    public static String reason(UnreadableInputException e, Path file) {
        return Optional.ofNullable(e.getMessage())
                .map(m -> m.startsWith(file + ": ") ? m.substring((file + ": ").length()) : m)
                .orElse("could not be read");
    }

    public Path file() {
        return file;
    }

    public FrameFacts facts() {
        return facts;
    }

    /** When it was taken on the camera's clock, in seconds from 1970 on; differences count. */
    public OptionalDouble takenSeconds() {
        return FrameTimes.seconds(file, facts);
    }

    /** The file as it lies on the card; not to be changed. */
    public byte[] bytes() {
        return bytes;
    }

    public int width() {
        return frame.width();
    }

    public int height() {
        return frame.height();
    }

    /** Bits of a code: 8 or 16. */
    public int bits() {
        return frame.bits();
    }

    /** Linear light of every code in the primaries of the file, 0 to 1. */
    public float[] linear() {
        return frame.profile().curve().table(frame.bits());
    }

    /** A reader for one thread. */
    public Rows rows() {
        DecodedFrame.RowReader reader = frame.rows();
        return reader::read;
    }

    /** Reads rows of codes; keeps its own scratch memory. */
    public interface Rows {
        /** Writes the codes of row {@code y} into the first {@code width} places of three arrays. */
        void read(int y, int[] red, int[] green, int[] blue);
    }

    @Override
    public void close() {
        memory.close();
    }
}
