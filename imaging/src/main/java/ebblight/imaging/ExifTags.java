package ebblight.imaging;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;

/** The Exif 2.32 fields of a written picture. */
final class ExifTags {

    private static final int POINTER = 34665;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");

    private static final DateTimeFormatter PART = DateTimeFormatter.ofPattern("SSS");

    private ExifTags() {}

    /** Fields of the main directory that TIFF and JPEG share. */
    static void common(TiffDirectory directory, PictureFacts facts) {
        directory.ascii(270, facts.description().replaceAll("[^\\x20-\\x7E]", "?"));
        directory.shorts(274, 1);
        directory.rational(282, 300);
        directory.rational(283, 300);
        directory.shorts(296, 2);
        directory.ascii(305, PictureFacts.SOFTWARE);
        facts.taken().ifPresent(t -> directory.ascii(306, TIME.format(t)));
    }

    /** The photograph's own directory, with the fields that Exif demands of every file. */
    static TiffDirectory exif(PictureFacts facts) {
        TiffDirectory exif = new TiffDirectory();
        facts.exposureSeconds().ifPresent(t -> exif.rational(33434, t));
        facts.fNumber().ifPresent(n -> exif.rational(33437, n));
        facts.isoSpeed().ifPresent(s -> exif.shorts(34855, (int) Math.min(65535, Math.round(s))));
        exif.undefined(36864, "0232".getBytes(StandardCharsets.US_ASCII));
        facts.taken().ifPresent(t -> {
            exif.ascii(36867, TIME.format(t));
            exif.ascii(37521, PART.format(t));
        });
        facts.focalMillimetres().ifPresent(f -> exif.rational(37386, f));
        exif.undefined(40960, "0100".getBytes(StandardCharsets.US_ASCII));
        exif.shorts(40961, 1);
        return exif;
    }

    /** Sets the pointer to the photograph's directory. */
    static void point(TiffDirectory directory, int offset) {
        directory.longs(POINTER, offset);
    }

    /** A whole Exif block as it stands in a JPEG segment, without its "Exif\0\0" head. */
    static byte[] block(PictureFacts facts, int width, int height) {
        TiffDirectory main = new TiffDirectory();
        common(main, facts);
        main.shorts(531, 1);
        point(main, 0);
        TiffDirectory exif = exif(facts);
        exif.undefined(37121, new byte[] {1, 2, 3, 0});
        exif.longs(40962, width);
        exif.longs(40963, height);
        int exifAt = 8 + main.size();
        point(main, exifAt);
        ByteBuffer b = ByteBuffer.allocate(exifAt + exif.size()).order(ByteOrder.LITTLE_ENDIAN);
        b.put("II".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        b.put(main.bytes(8)).put(exif.bytes(exifAt));
        return b.array();
    }
}
