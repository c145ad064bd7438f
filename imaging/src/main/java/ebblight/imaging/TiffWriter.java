package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.Deflater;

/**
 * Writes TIFF 6.0 with 16 bits a sample: strips compressed by Deflate with horizontal prediction (TIFF Technical Note
 * 3, predictor 2), a colour profile, Exif and XMP. Files stay below 2 GB.
 */
public final class TiffWriter {

    private static final int STRIP_BYTES = 1 << 18;
    /** Share of samples that equal their neighbour from which a strip counts as flat. */
    private static final double MOSTLY_FLAT = 0.25;

    private static final long LARGEST = Integer.MAX_VALUE - (1L << 20);

    private TiffWriter() {}

    /** Writes {@code picture} to {@code target}, whole or not at all. */
    public static void write(Path target, CodedPicture picture, PictureFacts facts, Work work) throws IOException {
        write(target, picture, facts, PictureNotes.NONE, work);
    }

    /** The same with what the photographer wants it to say. */
    public static void write(Path target, CodedPicture picture, PictureFacts facts, PictureNotes notes, Work work)
            throws IOException {
        int rowBytes = 6 * picture.width();
        int rows = Math.max(1, Math.min(picture.height(), STRIP_BYTES / rowBytes));
        int count = (picture.height() + rows - 1) / rows;
        byte[][] strips = new byte[count][];
        work.progress(0.9, "writing " + target.getFileName());
        work.forEach(count, s -> strips[s] = strip(picture, s * rows, Math.min(picture.height(), (s + 1) * rows)));
        int[] offsets = new int[count];
        int[] lengths = new int[count];
        long at = 8;
        for (int s = 0; s < count; s++) {
            offsets[s] = (int) at;
            lengths[s] = strips[s].length;
            at += strips[s].length + strips[s].length % 2;
            if (at > LARGEST) {
                throw new IOException(target + ": would be larger than 2 GB, more than a TIFF file can hold here");
            }
        }
        int directoryAt = (int) at;
        TiffDirectory main = directory(picture, facts, notes, rows, offsets, lengths);
        Optional<TiffDirectory> gps = notes.place().map(ExifTags::gps);
        ExifTags.point(main, 0, gps.map(g -> 0));
        int exifAt = directoryAt + main.size();
        TiffDirectory exif = ExifTags.exif(facts, picture.profile());
        int gpsAt = exifAt + exif.size();
        ExifTags.point(main, exifAt, gps.map(g -> gpsAt));
        try (OutputFile file = OutputFile.begin(target)) {
            try (OutputStream out = Files.newOutputStream(file.part())) {
                ByteBuffer head = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
                head.put("II".getBytes(StandardCharsets.US_ASCII))
                        .putShort((short) 42)
                        .putInt(directoryAt);
                out.write(head.array());
                for (byte[] strip : strips) {
                    out.write(strip);
                    if (strip.length % 2 == 1) {
                        out.write(0);
                    }
                }
                out.write(main.bytes(directoryAt));
                out.write(exif.bytes(exifAt));
                out.write(gps.map(g -> g.bytes(gpsAt)).orElse(new byte[0]));
            }
            work.check();
            file.commit();
        }
    }

    private static TiffDirectory directory(
            CodedPicture picture, PictureFacts facts, PictureNotes notes, int rows, int[] offsets, int[] lengths) {
        TiffDirectory d = new TiffDirectory();
        ExifTags.common(d, facts, notes);
        d.longs(256, picture.width());
        d.longs(257, picture.height());
        d.shorts(258, 16, 16, 16);
        d.shorts(259, 8);
        d.shorts(262, 2);
        d.longs(273, offsets);
        d.shorts(277, 3);
        d.longs(278, rows);
        d.longs(279, lengths);
        d.shorts(284, 1);
        d.shorts(317, 2);
        d.shorts(339, 1, 1, 1);
        d.bytes(700, XmpPacket.of(facts, notes));
        byte[] said = IptcBlock.of(notes);
        if (said.length > 0) {
            int[] longs = new int[(said.length + 3) / 4];
            ByteBuffer.wrap(Arrays.copyOf(said, 4 * longs.length))
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .asIntBuffer()
                    .get(longs);
            d.longs(33723, longs);
        }
        d.undefined(34675, picture.profile().bytes());
        return d;
    }

    private static byte[] strip(CodedPicture picture, int from, int to) {
        int row = 3 * picture.width();
        byte[] plain = new byte[2 * row * (to - from)];
        int q = 0;
        int same = 0;
        short[] codes = picture.codes();
        for (int y = from; y < to; y++) {
            int base = y * row;
            for (int i = 0; i < row; i++) {
                int v = codes[base + i] - (i < 3 ? 0 : codes[base + i - 3]);
                same += v == 0 ? 1 : 0;
                plain[q++] = (byte) v;
                plain[q++] = (byte) (v >> 8);
            }
        }
        Deflater deflater = new Deflater(4);
        // Noise repeats nothing: looking for repeats takes four times as long and saves a twentieth. Flat areas do.
        if (same < MOSTLY_FLAT * row * (to - from)) {
            deflater.setStrategy(Deflater.HUFFMAN_ONLY);
        }
        deflater.setInput(plain);
        deflater.finish();
        byte[] out = new byte[plain.length + plain.length / 100 + 64];
        int n = 0;
        while (!deflater.finished()) {
            if (n == out.length) {
                out = Arrays.copyOf(out, 2 * n);
            }
            n += deflater.deflate(out, n, out.length - n);
        }
        deflater.end();
        return Arrays.copyOf(out, n);
    }
}
