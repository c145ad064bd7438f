package ebblight.imaging.raw;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import java.io.DataOutputStream;
import java.io.IOException;

/** Reads the mosaic of an unpacked file and writes it to the other process. */
final class MosaicReading {

    /** Where libraw_image_sizes_t keeps its fields, behind the pointer to the pixels (0.18 to 0.22). */
    private static final long RAW_HEIGHT_AT = 8;

    private static final long RAW_WIDTH_AT = 10;
    private static final long ASPECT_AT = 32;
    private static final long FLIP_AT = 40;
    private static final int PERIOD = 12;

    private final LibRaw library;
    private final Pointer raw;
    private final int width;
    private final int height;
    private final int[] channels = new int[4];

    /** @param raw handle whose file is unpacked and spread over four channels */
    MosaicReading(LibRaw library, Pointer raw) throws RawException {
        this.library = library;
        this.raw = raw;
        width = library.libraw_get_iwidth(raw);
        height = library.libraw_get_iheight(raw);
        boolean known = (raw.getShort(RAW_HEIGHT_AT) & 0xFFFF) == library.libraw_get_raw_height(raw)
                && (raw.getShort(RAW_WIDTH_AT) & 0xFFFF) == library.libraw_get_raw_width(raw);
        if (!known) {
            throw new RawException("cannot be added up before demosaicing with this version of LibRaw");
        }
        if (raw.getDouble(ASPECT_AT) != 1) {
            throw new RawException("has pixels that are not square, which a mosaic cannot be written with");
        }
        for (int k = 0; k < 4; k++) {
            channels[k] = library.libraw_COLOR(raw, k / 2, k % 2);
        }
        for (int y = 0; y < PERIOD; y++) {
            for (int x = 0; x < PERIOD; x++) {
                int channel = library.libraw_COLOR(raw, y, x);
                if (channel > 3 || channel < 0 || channel != channels[y % 2 * 2 + x % 2]) {
                    throw new RawException("comes from a sensor without Bayer filters: stack it without --mosaic");
                }
            }
        }
    }

    void write(DataOutputStream out) throws IOException {
        Pointer image = raw.getPointer(0);
        int white = library.libraw_get_color_maximum(raw);
        try (Memory samples = new Memory(2L * width * height)) {
            for (long i = 0; i < (long) width * height; i++) {
                samples.setShort(2 * i, image.getShort(8 * i + 2L * channel(i)));
            }
            library.libraw_subtract_black(raw);
            out.writeInt(width);
            out.writeInt(height);
            for (int each : channels) {
                out.writeInt(each == 3 ? 1 : each);
            }
            for (int k = 0; k < 4; k++) {
                out.writeInt(black(samples, image, k % 2, k / 2));
            }
            out.writeInt(white);
            out.writeInt(raw.getInt(FLIP_AT));
            for (int c = 0; c < 3; c++) {
                out.writeFloat(library.libraw_get_cam_mul(raw, c));
            }
            for (int c = 0; c < 3; c++) {
                out.writeFloat(library.libraw_get_pre_mul(raw, c));
            }
            for (int k = 0; k < 9; k++) {
                out.writeFloat(library.libraw_get_rgb_cam(raw, k / 3, k % 3));
            }
            Pointer camera = library.libraw_get_iparams(raw);
            out.writeUTF((camera.getString(4) + "\n" + camera.getString(68)).strip());
            byte[] piece = new byte[Wire.PIECE];
            for (long at = 0; at < samples.size(); at += piece.length) {
                int n = (int) Math.min(piece.length, samples.size() - at);
                samples.read(at, piece, 0, n);
                out.write(piece, 0, n);
            }
        }
    }

    private int channel(long i) {
        return channels[(int) (i / width % 2 * 2 + i % width % 2)];
    }

    /** Before and after it was taken off; where a value was above it. */
    private int black(Memory before, Pointer after, int column, int row) {
        for (int y = row; y < height; y += 2) {
            for (int x = column; x < width; x += 2) {
                long i = (long) y * width + x;
                int left = after.getShort(8 * i + 2L * channel(i)) & 0xFFFF;
                if (left > 0) {
                    return (before.getShort(2 * i) & 0xFFFF) - left;
                }
            }
        }
        return 0;
    }
}
