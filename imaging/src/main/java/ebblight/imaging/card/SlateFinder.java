package ebblight.imaging.card;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.ChecksumException;
import com.google.zxing.DecodeHintType;
import com.google.zxing.FormatException;
import com.google.zxing.NotFoundException;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import ebblight.imaging.OpenedPicture;
import java.util.Arrays;
import java.util.Map;

/** Looks for a slate in a picture: a QR code (ISO/IEC 18004) whose text says that it is one. */
final class SlateFinder {

    /** A code that fills a sixth of the width keeps three pixels a module at this width. */
    private static final int ACROSS = 1000;

    private static final String SCHEMA = "\"slate/1\"";
    private static final Map<DecodeHintType, Object> HARDER = Map.of(DecodeHintType.TRY_HARDER, true);

    private SlateFinder() {}

    /** What the slate in the picture says; empty when there is none. */
    static String text(OpenedPicture picture) {
        int size = Math.max(1, picture.width() / ACROSS);
        int w = picture.width() / size;
        int h = picture.height() / size;
        if (w < 40 || h < 40) {
            return "";
        }
        BinaryBitmap bitmap = new BinaryBitmap(
                new HybridBinarizer(new PlanarYUVLuminanceSource(grey(picture, size, w, h), w, h, 0, 0, w, h, false)));
        try {
            String text = new QRCodeReader().decode(bitmap, HARDER).getText();
            return text.contains(SCHEMA) ? text : "";
        } catch (NotFoundException | ChecksumException | FormatException e) {
            return ""; // no code, or one that cannot be read: a picture like any other
        }
    }

    private static byte[] grey(OpenedPicture picture, int size, int w, int h) {
        byte[] grey = new byte[w * h];
        int shift = picture.bits() - 8;
        int[][] row = new int[3][picture.width()];
        int[] sums = new int[w];
        OpenedPicture.Rows rows = picture.rows();
        for (int y = 0; y < h; y++) {
            Arrays.fill(sums, 0);
            for (int j = 0; j < size; j++) {
                rows.read(y * size + j, row[0], row[1], row[2]);
                for (int x = 0; x < w * size; x++) {
                    sums[x / size] += (row[0][x] + 2 * row[1][x] + row[2][x]) >> (2 + shift);
                }
            }
            for (int x = 0; x < w; x++) {
                grey[y * w + x] = (byte) (sums[x] / (size * size));
            }
        }
        return grey;
    }
}
