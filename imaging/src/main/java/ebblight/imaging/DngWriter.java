package ebblight.imaging;

import ebblight.imaging.raw.RawMosaic;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Writes a Bayer mosaic as DNG 1.4 (tags 33421 on and 50706 on): 16 bits, not compressed. Files stay below 2 GB. */
final class DngWriter {

    /** Linear sRGB to XYZ under D65 (IEC 61966-2-1). */
    private static final double[] SRGB_TO_XYZ = {
        0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.0721750, 0.0193339, 0.1191920, 0.9503041
    };

    private static final int D65 = 21;
    private static final int COLOUR_FILTERS = 32803;

    private DngWriter() {}

    static void write(Path target, RawMosaic mosaic, FrameFacts facts, int frames) throws IOException {
        PictureFacts written = PictureFacts.of(
                facts, facts.exposureSeconds(), frames, List.of(), "Mean of " + frames + " frames, mosaic");
        TiffDirectory main = new TiffDirectory();
        ExifTags.common(main, written, PictureNotes.NONE);
        TiffDirectory exif = ExifTags.exif(written, IccProfile.proPhoto());
        tags(main, mosaic);
        ExifTags.point(main, 0, Optional.empty());
        int exifAt = 8 + main.size();
        ExifTags.point(main, exifAt, Optional.empty());
        int pixelsAt = exifAt + exif.size();
        main.longs(273, pixelsAt);
        byte[] row = new byte[2 * mosaic.width()];
        ByteBuffer codes = ByteBuffer.wrap(row).order(ByteOrder.LITTLE_ENDIAN);
        try (OutputFile file = OutputFile.begin(target)) {
            try (OutputStream out = Files.newOutputStream(file.part())) {
                ByteBuffer head = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
                head.put("II".getBytes(StandardCharsets.US_ASCII))
                        .putShort((short) 42)
                        .putInt(8);
                out.write(head.array());
                out.write(main.bytes(8));
                out.write(exif.bytes(exifAt));
                for (int y = 0; y < mosaic.height(); y++) {
                    codes.asShortBuffer().put(mosaic.samples(), y * mosaic.width(), mosaic.width());
                    out.write(row);
                }
            }
            file.commit();
        }
    }

    private static void tags(TiffDirectory d, RawMosaic m) {
        String[] camera = m.camera().split("\n", 2);
        d.longs(254, 0);
        d.longs(256, m.width());
        d.longs(257, m.height());
        d.shorts(258, 16);
        d.shorts(259, 1);
        d.shorts(262, COLOUR_FILTERS);
        d.ascii(271, camera[0]);
        d.ascii(272, camera.length > 1 ? camera[1] : camera[0]);
        d.longs(273, 0);
        d.shorts(274, m.flip() == 3 ? 3 : m.flip() == 5 ? 8 : m.flip() == 6 ? 6 : 1);
        d.shorts(277, 1);
        d.longs(278, m.height());
        d.longs(279, 2 * m.width() * m.height());
        d.shorts(284, 1);
        d.shorts(33421, 2, 2);
        byte[] pattern = new byte[4];
        for (int k = 0; k < 4; k++) {
            pattern[k] = (byte) m.colours()[k];
        }
        d.bytes(33422, pattern);
        d.bytes(50706, new byte[] {1, 4, 0, 0});
        d.bytes(50707, new byte[] {1, 1, 0, 0});
        d.ascii(50708, m.camera().replace('\n', ' '));
        d.shorts(50713, 2, 2);
        d.longs(50714, m.black());
        d.longs(50717, m.white());
        d.signedRationals(50721, fromXyz(m));
        double[] neutral = new double[3];
        float[] gains = m.cameraGains()[0] > 0 && m.cameraGains()[2] > 0 ? m.cameraGains() : m.daylightGains();
        for (int c = 0; c < 3; c++) {
            neutral[c] = gains[1] / gains[c];
        }
        d.rationals(50728, neutral);
        d.shorts(50778, D65);
    }

    /** XYZ to the camera's colours: the way back from its colours to sRGB, each row with the gain of daylight undone. */
    private static double[] fromXyz(RawMosaic m) {
        double[] toSrgb = new double[9];
        for (int k = 0; k < 9; k++) {
            toSrgb[k] = m.toSrgb()[k];
        }
        double[] fromXyz = IccProfile.product(IccProfile.inverse(toSrgb), IccProfile.inverse(SRGB_TO_XYZ));
        for (int k = 0; k < 9; k++) {
            fromXyz[k] /= m.daylightGains()[k / 3];
        }
        return fromXyz;
    }
}
