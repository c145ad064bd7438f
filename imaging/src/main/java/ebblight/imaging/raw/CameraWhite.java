package ebblight.imaging.raw;

import com.sun.jna.Pointer;

/**
 * Asks LibRaw for the camera's white balance. Its C API has no function for that, and setting the gains by hand leaves out
 * the colour matrices that some old cameras wrote. So the switch is looked for among the options: they keep their order
 * (libraw_types.h, libraw_output_params_t), and neighbours are recognised because functions exist that set them.
 */
final class CameraWhite {

    /** The options lie in the first part of the handle, which goes on far beyond this. */
    private static final int LOOKED_AT = 1 << 15;
    /** The options from the gains to {@code highlight} take less than this, in bytes. */
    private static final int NEAR = 96;

    private static final float RARE_GAIN = 0.8437265f;
    /** Places behind {@code highlight}, in bytes. */
    private static final int USE_AUTO = 4;

    private static final int USE_CAMERA = 8;
    private static final int USE_MATRIX = 12;
    private static final int OUTPUT_COLOUR = 16;

    private final LibRaw library;
    private final Pointer raw;

    private CameraWhite(LibRaw library, Pointer raw) {
        this.library = library;
        this.raw = raw;
    }

    /** Sets the switch of a handle that has no file open yet; false when it was not found for certain. */
    static boolean ask(LibRaw library, Pointer raw) {
        return new CameraWhite(library, raw).found();
    }

    private boolean found() {
        library.libraw_set_user_mul(raw, 0, RARE_GAIN);
        try {
            for (int at = 0; at < LOOKED_AT; at += 4) {
                if (raw.getFloat(at) == RARE_GAIN) {
                    return setBehind(at);
                }
            }
            return false;
        } finally {
            library.libraw_set_user_mul(raw, 0, 0);
            library.libraw_set_highlight(raw, 0);
            library.libraw_set_output_color(raw, 1);
        }
    }

    private boolean setBehind(int gains) {
        for (int at = gains + 16; at < gains + NEAR; at += 4) {
            if (answers(at, 7, 5) && answers(at, 3, 2)) {
                raw.setInt(at + USE_CAMERA, 1);
                return true;
            }
        }
        return false;
    }

    private boolean answers(int at, int highlight, int colour) {
        library.libraw_set_highlight(raw, highlight);
        library.libraw_set_output_color(raw, colour);
        return raw.getInt(at) == highlight
                && raw.getInt(at + OUTPUT_COLOUR) == colour
                && raw.getInt(at + USE_AUTO) == 0
                && raw.getInt(at + USE_CAMERA) == 0
                && raw.getInt(at + USE_MATRIX) == 1;
    }
}
