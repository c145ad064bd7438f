package ebblight.imaging;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Caption, creator, copyright and keywords as an IPTC-IIM 4.2 block in UTF-8. */
final class IptcBlock {

    private static final int MARK = 0x1C;

    private IptcBlock() {}

    /** The datasets; empty when there is nothing to say. */
    static byte[] of(PictureNotes notes) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        put(said, 2, 5, notes.title(), 64);
        notes.keywords().forEach(word -> put(said, 2, 25, word, 64));
        put(said, 2, 80, notes.creator(), 32);
        put(said, 2, 116, notes.copyright(), 128);
        put(said, 2, 120, notes.caption(), 2000);
        if (said.size() == 0) {
            return new byte[0];
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        put(out, 1, 90, "\u001b%G", 32); // the texts are UTF-8
        dataset(out, 2, 0, new byte[] {0, 4}); // version 4
        out.writeBytes(said.toByteArray());
        return out.toByteArray();
    }

    /** The block as image resource 0x0404, as it stands in APP13 of a JPEG. */
    static byte[] resource(byte[] block) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("8BIM".getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(new byte[] {4, 4, 0, 0, 0, 0, (byte) (block.length >> 8), (byte) block.length});
        out.writeBytes(block);
        if (block.length % 2 == 1) {
            out.write(0);
        }
        return out.toByteArray();
    }

    private static void put(ByteArrayOutputStream out, int record, int number, String text, int most) {
        if (!text.isEmpty()) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            int length = Math.min(most, bytes.length);
            while (length < bytes.length && length > 0 && (bytes[length] & 0xC0) == 0x80) {
                length--; // never cut a letter in two
            }
            dataset(out, record, number, Arrays.copyOf(bytes, length));
        }
    }

    private static void dataset(ByteArrayOutputStream out, int record, int number, byte[] data) {
        out.writeBytes(new byte[] {MARK, (byte) record, (byte) number, (byte) (data.length >> 8), (byte) data.length});
        out.writeBytes(data);
    }
}
