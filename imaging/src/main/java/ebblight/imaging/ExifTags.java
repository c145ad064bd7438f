package ebblight.imaging;

import ebblight.core.sky.Place;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/** The Exif 2.32 fields of a written picture. */
final class ExifTags {

    private static final int EXIF_POINTER = 34665;
    /** The colour space that only a profile tells. */
    private static final int UNCALIBRATED = 65535;

    private static final int GPS_POINTER = 34853;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");

    private static final DateTimeFormatter PART = DateTimeFormatter.ofPattern("SSS");

    private ExifTags() {}

    /** Fields of the main directory that TIFF and JPEG share. */
    static void common(TiffDirectory directory, PictureFacts facts, PictureNotes notes) {
        text(directory, 270, notes.caption().isEmpty() ? facts.description() : notes.caption());
        text(directory, 315, notes.creator());
        text(directory, 33432, notes.copyright());
        directory.shorts(274, 1);
        directory.rational(282, notes.pixelsPerInch());
        directory.rational(283, notes.pixelsPerInch());
        directory.shorts(296, 2);
        directory.ascii(305, PictureFacts.SOFTWARE);
        facts.taken().ifPresent(t -> directory.ascii(306, TIME.format(t)));
    }

    /** Exif knows ASCII only: letters lose their accents; XMP holds the whole text. */
    private static void text(TiffDirectory directory, int tag, String text) {
        if (!text.isEmpty()) {
            String plain = Normalizer.normalize(text.replace("©", "(c)"), Normalizer.Form.NFD)
                    .replaceAll("\\p{M}", "");
            directory.ascii(tag, plain.replaceAll("[^\\x20-\\x7E]", "?"));
        }
    }

    /** Where it was taken (Exif 2.32, 4.6.6). */
    static TiffDirectory gps(Place place) {
        TiffDirectory gps = new TiffDirectory();
        gps.bytes(0, new byte[] {2, 3, 0, 0});
        gps.ascii(1, place.latitudeDegrees() < 0 ? "S" : "N");
        gps.rational(2, sexagesimal(place.latitudeDegrees()));
        gps.ascii(3, place.longitudeDegrees() < 0 ? "W" : "E");
        gps.rational(4, sexagesimal(place.longitudeDegrees()));
        return gps;
    }

    private static double[] sexagesimal(double degrees) {
        double whole = Math.abs(degrees);
        double minutes = (whole - Math.floor(whole)) * 60;
        return new double[] {Math.floor(whole), Math.floor(minutes), (minutes - Math.floor(minutes)) * 60};
    }

    /** The photograph's own directory, with the fields that Exif demands of every file. */
    static TiffDirectory exif(PictureFacts facts, IccProfile profile) {
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
        exif.shorts(40961, profile.sameAs(IccProfile.srgb()) ? 1 : UNCALIBRATED);
        return exif;
    }

    /** Sets the pointers to the photograph's directory and, where there is one, to that of its place. */
    static void point(TiffDirectory directory, int exifAt, Optional<Integer> gpsAt) {
        directory.longs(EXIF_POINTER, exifAt);
        gpsAt.ifPresent(at -> directory.longs(GPS_POINTER, at));
    }

    /** A whole Exif block as it stands in a JPEG segment, without its "Exif\0\0" head. */
    static byte[] block(PictureFacts facts, PictureNotes notes, CodedPicture picture) {
        TiffDirectory main = new TiffDirectory();
        common(main, facts, notes);
        main.shorts(531, 1);
        Optional<TiffDirectory> gps = notes.place().map(ExifTags::gps);
        point(main, 0, gps.map(g -> 0));
        TiffDirectory exif = exif(facts, picture.profile());
        exif.undefined(37121, new byte[] {1, 2, 3, 0});
        exif.longs(40962, picture.width());
        exif.longs(40963, picture.height());
        int exifAt = 8 + main.size();
        int gpsAt = exifAt + exif.size();
        point(main, exifAt, gps.map(g -> gpsAt));
        byte[] placed = gps.map(g -> g.bytes(gpsAt)).orElse(new byte[0]);
        ByteBuffer b = ByteBuffer.allocate(gpsAt + placed.length).order(ByteOrder.LITTLE_ENDIAN);
        b.put("II".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
        b.put(main.bytes(8)).put(exif.bytes(exifAt)).put(placed);
        return b.array();
    }
}
