package ebblight.app.pocket;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.LZMAOutputStream;

/**
 * Bytes made small. Browsers undo gzip themselves and at once; LZMA takes the page's own code and some tens of
 * milliseconds, and is a quarter smaller on the engine, which waits in the background anyway.
 */
final class Smaller {

    private static final int LARGEST_WINDOW = 1 << 20;

    private Smaller() {}

    static byte[] gzip(String text) throws IOException {
        return gzip(text.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] gzip(byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed) {
            {
                def.setLevel(Deflater.BEST_COMPRESSION);
            }
        }) {
            gzip.write(bytes);
        }
        return packed.toByteArray();
    }

    /** A stream of the kind .lzma that tells its length in its head; pocket/lzma.js undoes it. */
    static byte[] lzma(byte[] bytes) throws IOException {
        LZMA2Options options = new LZMA2Options(LZMA2Options.PRESET_MAX);
        options.setDictSize(LARGEST_WINDOW);
        // code has no words of two or four bytes that would begin at even places
        options.setPb(0);
        options.setNiceLen(LZMA2Options.NICE_LEN_MAX);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (LZMAOutputStream lzma = new LZMAOutputStream(packed, options, bytes.length)) {
            lzma.write(bytes);
        }
        return packed.toByteArray();
    }
}
