package ebblight.imaging;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/** Finds the colour profile inside the bytes of a JPEG (ICC.1 annex B.4), PNG (iCCP) or TIFF (tag 34675) file. */
final class IccBytes {

    private static final byte[] JPEG_MARK = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);
    private static final int TIFF_TAG = 34675;
    private static final int LARGEST = 1 << 24;

    private IccBytes() {}

    static Optional<byte[]> of(byte[] file) {
        try {
            if (file.length > 4 && (file[0] & 0xFF) == 0xFF && (file[1] & 0xFF) == 0xD8) {
                return jpeg(file);
            }
            if (file.length > 33 && file[1] == 'P' && file[2] == 'N' && file[3] == 'G') {
                return png(file);
            }
            if (file.length > 8 && file[0] == file[1] && (file[0] == 'I' || file[0] == 'M')) {
                return tiff(file);
            }
        } catch (IndexOutOfBoundsException | IllegalArgumentException | DataFormatException e) {
            return Optional.empty(); // a damaged profile counts as none
        }
        return Optional.empty();
    }

    private static Optional<byte[]> jpeg(byte[] file) {
        TreeMap<Integer, byte[]> chunks = new TreeMap<>();
        int at = 2;
        while (at + 4 < file.length && (file[at] & 0xFF) == 0xFF) {
            int marker = file[at + 1] & 0xFF;
            if (marker == 0xDA || marker == 0xD9) {
                break;
            }
            int length = (file[at + 2] & 0xFF) << 8 | (file[at + 3] & 0xFF);
            int head = at + 4 + JPEG_MARK.length;
            if (marker == 0xE2
                    && length > JPEG_MARK.length + 4
                    && Arrays.equals(Arrays.copyOfRange(file, at + 4, head), JPEG_MARK)) {
                chunks.put(file[head] & 0xFF, Arrays.copyOfRange(file, head + 2, at + 2 + length));
            }
            at += 2 + length;
        }
        if (chunks.isEmpty()) {
            return Optional.empty();
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        chunks.values().forEach(all::writeBytes);
        return Optional.of(all.toByteArray());
    }

    private static Optional<byte[]> png(byte[] file) throws DataFormatException {
        ByteBuffer b = ByteBuffer.wrap(file);
        int at = 8;
        while (at + 12 <= file.length) {
            int length = b.getInt(at);
            String type = new String(file, at + 4, 4, StandardCharsets.US_ASCII);
            if (type.equals("iCCP")) {
                int name = at + 8;
                while (file[name] != 0) {
                    name++;
                }
                Inflater inflater = new Inflater();
                inflater.setInput(file, name + 2, at + 8 + length - name - 2);
                byte[] out = new byte[LARGEST];
                int n = inflater.inflate(out);
                inflater.end();
                return Optional.of(Arrays.copyOf(out, n));
            }
            if (type.equals("IDAT")) {
                return Optional.empty();
            }
            at += 12 + length;
        }
        return Optional.empty();
    }

    private static Optional<byte[]> tiff(byte[] file) {
        ByteBuffer b = ByteBuffer.wrap(file).order(file[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int directory = b.getInt(4);
        int entries = b.getShort(directory) & 0xFFFF;
        for (int k = 0; k < entries; k++) {
            int entry = directory + 2 + 12 * k;
            if ((b.getShort(entry) & 0xFFFF) == TIFF_TAG) {
                int length = b.getInt(entry + 4);
                int at = b.getInt(entry + 8);
                return Optional.of(Arrays.copyOfRange(file, at, at + length));
            }
        }
        return Optional.empty();
    }
}
