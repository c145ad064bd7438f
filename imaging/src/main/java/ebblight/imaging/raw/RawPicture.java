package ebblight.imaging.raw;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import java.io.DataOutputStream;
import java.io.IOException;

/** One RAW file opened by LibRaw in this process. */
final class RawPicture implements AutoCloseable {

    /** LibRaw needs about 16 bytes a pixel: this keeps a worker below 3 GB. */
    private static final long MOST_PIXELS = 180_000_000;

    private static final int PROPHOTO = 4;
    private static final int CHANNELS = 4;
    /** Where libraw_processed_image_t keeps its fields; the same in all versions. */
    private static final long HEIGHT_AT = 4;

    private static final long WIDTH_AT = 6;
    private static final long COLOURS_AT = 8;
    private static final long BITS_AT = 10;
    private static final long SAMPLES_AT = 16;

    private final LibRaw library;
    private final Memory file;
    private final Pointer raw;
    private final boolean cameraWhite;
    private int damage;
    /** Held here, since native code alone would not keep it from being collected. */
    private final LibRaw.DataError handler = (data, name, offset) -> damage++;

    RawPicture(LibRaw library, Memory file) throws RawException {
        this.library = library;
        this.file = file;
        this.raw = library.libraw_init(0);
        library.libraw_set_dataerror_handler(raw, handler, Pointer.NULL);
        cameraWhite = CameraWhite.ask(library, raw);
        try {
            check(library.libraw_open_buffer(raw, file, file.size()));
            long width = library.libraw_get_raw_width(raw);
            long height = library.libraw_get_raw_height(raw);
            if (width * height > MOST_PIXELS) {
                throw new RawException("says that it holds " + width + " × " + height + " pixels, more than "
                        + MOST_PIXELS / 1_000_000 + " million: develop it to TIFF first");
            }
        } catch (RawException e) {
            close();
            throw e;
        }
    }

    /** Writes what the head of the file tells, as {@link Wire#FACTS} says. */
    void facts(DataOutputStream out) throws IOException {
        Pointer other = library.libraw_get_imgother(raw);
        Pointer camera = library.libraw_get_iparams(raw);
        out.writeFloat(other.getFloat(4));
        out.writeFloat(other.getFloat(8));
        out.writeFloat(other.getFloat(0));
        out.writeFloat(other.getFloat(12));
        out.writeLong(other.getLong(16));
        out.writeUTF((camera.getString(4) + " " + camera.getString(68)).strip());
    }

    /** Writes the sensor's mosaic, as {@link Wire#MOSAIC} says, once {@code begin} has begun the answer. */
    void mosaic(Beginning begin, DataOutputStream out) throws IOException {
        unpack();
        check(library.libraw_raw2image(raw));
        MosaicReading reading = new MosaicReading(library, raw);
        begin.begin();
        reading.write(out);
    }

    /** Begins an answer. */
    interface Beginning {
        void begin() throws IOException;
    }

    private void unpack() throws RawException {
        check(library.libraw_unpack(raw));
        if (damage > 0) {
            throw new RawException("is damaged or cut off: its data end or break inside the picture");
        }
    }

    /** Takes a developed picture that lies in native memory. */
    interface Taker {
        /** {@code samples} holds 16 bits of red, green, blue a pixel, in the machine's order. */
        void take(int width, int height, Pointer samples) throws IOException;
    }

    /**
     * Develops to 16-bit linear light of ProPhoto primaries with the camera's white balance (the daylight one where the
     * camera noted none), no brightening.
     */
    void develop(Taker taker) throws IOException {
        unpack();
        library.libraw_set_output_bps(raw, 16);
        library.libraw_set_output_color(raw, PROPHOTO);
        library.libraw_set_gamma(raw, 0, 1);
        library.libraw_set_gamma(raw, 1, 1);
        library.libraw_set_no_auto_bright(raw, 1);
        if (!cameraWhite && library.libraw_get_cam_mul(raw, 0) > 0 && library.libraw_get_cam_mul(raw, 2) > 0) {
            for (int c = 0; c < CHANNELS; c++) {
                library.libraw_set_user_mul(raw, c, library.libraw_get_cam_mul(raw, c));
            }
        }
        check(library.libraw_dcraw_process(raw));
        IntByReference error = new IntByReference();
        Pointer image = library.libraw_dcraw_make_mem_image(raw, error);
        check(error.getValue());
        try {
            int bits = image.getShort(BITS_AT);
            int colours = image.getShort(COLOURS_AT);
            if (bits != 16 || colours != 3) {
                throw new RawException("gives " + colours + " colours of " + bits + " bits; three of 16 were expected");
            }
            taker.take(image.getShort(WIDTH_AT) & 0xFFFF, image.getShort(HEIGHT_AT) & 0xFFFF, image.share(SAMPLES_AT));
        } finally {
            library.libraw_dcraw_clear_mem(image);
        }
    }

    private void check(int error) throws RawException {
        if (error != 0) {
            throw new RawException("could not be developed (LibRaw: " + library.libraw_strerror(error) + ")");
        }
    }

    @Override
    public void close() {
        library.libraw_close(raw);
        file.close();
    }
}
