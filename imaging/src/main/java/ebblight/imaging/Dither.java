package ebblight.imaging;

/** Takes 16-bit codes to 8 bits with a fixed pattern of noise of one step, so that slow gradients do not band. */
final class Dither {

    private Dither() {}

    /** Noise for pixel {@code p}, 0 to 256: an integer hash (Wellons' lowbias32), the same in every run. */
    static int of(int p) {
        int x = p;
        x ^= x >>> 16;
        x *= 0x7feb352d;
        x ^= x >>> 15;
        x *= 0x846ca68b;
        x ^= x >>> 16;
        return (x & 0xFFFF) % 257;
    }

    /** Code of 0 to 255 for a code of 0 to 65535; on average the exact value. */
    static int to8(int code16, int noise) {
        return Math.min(255, (code16 + noise) / 257);
    }
}
