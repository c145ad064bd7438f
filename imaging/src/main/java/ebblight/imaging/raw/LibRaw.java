package ebblight.imaging.raw;

import com.sun.jna.Callback;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import com.sun.jna.ptr.IntByReference;
import java.util.List;
import java.util.Optional;

/**
 * The functions used of LibRaw's C API (libraw.h, versions 0.20 to 0.22). Handles and pictures are pointers; functions
 * that return int return 0 for success.
 */
interface LibRaw extends Library {

    /** Property that names one library to load in place of those looked for. */
    String PROPERTY = "ebblight.libraw";

    /** Names under which systems keep it: Debian's by version, then the plain ones of macOS and Windows. */
    List<String> NAMES = List.of("libraw_r.so.25", "libraw_r.so.23", "libraw_r.so.20", "raw_r", "libraw", "raw");

    /** The library of this system; empty when there is none. */
    static Optional<LibRaw> load() {
        String named = System.getProperty(PROPERTY, "");
        for (String name : named.isEmpty() ? NAMES : List.of(named)) {
            try {
                return Optional.of(Native.load(name, LibRaw.class));
            } catch (UnsatisfiedLinkError e) {
                // the next name
            }
        }
        return Optional.empty();
    }

    Pointer libraw_init(int flags);

    void libraw_close(Pointer raw);

    String libraw_strerror(int error);

    /** Reads the head of a file in memory, which must stay there until {@code libraw_close}. */
    int libraw_open_buffer(Pointer raw, Pointer bytes, long size);

    int libraw_unpack(Pointer raw);

    /** Spreads the sensor's values over four channels a pixel, which the handle's first field points to. */
    int libraw_raw2image(Pointer raw);

    /** Takes the black level off what {@code libraw_raw2image} made. */
    void libraw_subtract_black(Pointer raw);

    int libraw_dcraw_process(Pointer raw);

    Pointer libraw_dcraw_make_mem_image(Pointer raw, IntByReference error);

    void libraw_dcraw_clear_mem(Pointer image);

    /** Begins with iso_speed, shutter, aperture, focal_len (float) and timestamp (time_t). */
    Pointer libraw_get_imgother(Pointer raw);

    /** Begins with a guard of 4 bytes, make and model in 64 bytes each. */
    Pointer libraw_get_iparams(Pointer raw);

    int libraw_get_raw_width(Pointer raw);

    int libraw_get_raw_height(Pointer raw);

    int libraw_get_iwidth(Pointer raw);

    int libraw_get_iheight(Pointer raw);

    /** Channel of a pixel of the mosaic: 0 red, 1 and 3 green, 2 blue. */
    int libraw_COLOR(Pointer raw, int row, int column);

    int libraw_get_color_maximum(Pointer raw);

    float libraw_get_pre_mul(Pointer raw, int channel);

    /** Camera's colours to linear sRGB. */
    float libraw_get_rgb_cam(Pointer raw, int row, int column);

    float libraw_get_cam_mul(Pointer raw, int channel);

    void libraw_set_user_mul(Pointer raw, int channel, float gain);

    void libraw_set_output_bps(Pointer raw, int bits);

    void libraw_set_output_color(Pointer raw, int space);

    void libraw_set_gamma(Pointer raw, int index, float value);

    void libraw_set_highlight(Pointer raw, int mode);

    void libraw_set_no_auto_bright(Pointer raw, int value);

    void libraw_set_dataerror_handler(Pointer raw, DataError handler, Pointer data);

    /** Called where the data of a file cannot be made sense of; LibRaw itself goes on. */
    interface DataError extends Callback {
        void at(Pointer data, String file, long offset);
    }
}
