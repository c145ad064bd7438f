package ebblight.app.memory;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.zip.DataFormatException;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.Inflater;

/** Bytes as text that fits into a field: zlib (RFC 1950), then base64 (RFC 4648). */
final class Packed {

    private Packed() {}

    static String of(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(out)) {
            deflate.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Base64.getEncoder().encodeToString(out.toByteArray());
    }

    /** The bytes again; empty where the text holds no such bytes of the length expected. */
    static byte[] open(String text, int length) {
        try {
            Inflater inflater = new Inflater();
            inflater.setInput(Base64.getDecoder().decode(text));
            byte[] bytes = new byte[length];
            int n = inflater.inflate(bytes);
            inflater.end();
            return n == length ? bytes : new byte[0];
        } catch (DataFormatException | IllegalArgumentException e) {
            return new byte[0];
        }
    }
}
