package ebblight.imaging.card;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import ebblight.imaging.GreyPng;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;

/** A slate as a QR code (ISO/IEC 18004), level M: an eighth of it may be hidden by rain or glare. */
public final class SlateCode {

    /** Light modules that a reader needs all round (ISO/IEC 18004, from memory). */
    public static final int QUIET = 4;

    private static final int PIXELS_PER_MODULE = 12;

    private final ByteMatrix modules;

    private SlateCode(ByteMatrix modules) {
        this.modules = modules;
    }

    /** The code of a text. */
    public static SlateCode of(String text) {
        return of(text, ErrorCorrectionLevel.M);
    }

    /** The code of a longer text, for a screen on which nothing hides any of it: level L, the coarsest that holds it. */
    public static SlateCode ofLong(String text) {
        return of(text, ErrorCorrectionLevel.L);
    }

    private static SlateCode of(String text, ErrorCorrectionLevel level) {
        try {
            return new SlateCode(Encoder.encode(text, level, Map.of(EncodeHintType.CHARACTER_SET, "UTF-8"))
                    .getMatrix());
        } catch (WriterException e) {
            throw new IllegalArgumentException("a text of " + text.length() + " signs is too long for a code", e);
        }
    }

    /** Modules along a side, without the quiet ones round it. */
    public int size() {
        return modules.getWidth();
    }

    /** Whether a module is dark. */
    public boolean dark(int column, int row) {
        return modules.get(column, row) == 1;
    }

    /** The code with its quiet border as a path of an SVG whose unit is a module. */
    public String svgPath() {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < size(); y++) {
            for (int x = 0; x < size(); x++) {
                if (dark(x, y)) {
                    path.append('M')
                            .append(x + QUIET)
                            .append(' ')
                            .append(y + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        return path.toString();
    }

    /** A whole SVG document. */
    public String svg() {
        int side = size() + 2 * QUIET;
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + side + " " + side
                + "\" shape-rendering=\"crispEdges\"><rect width=\"" + side + "\" height=\"" + side
                + "\" fill=\"#fff\"/><path d=\"" + svgPath() + "\"/></svg>\n";
    }

    /** Writes the code with its border as a grey PNG. */
    public void writePng(Path file) throws IOException {
        int side = (size() + 2 * QUIET) * PIXELS_PER_MODULE;
        byte[] grey = new byte[side * side];
        Arrays.fill(grey, (byte) 255);
        for (int y = QUIET * PIXELS_PER_MODULE; y < side - QUIET * PIXELS_PER_MODULE; y++) {
            for (int x = QUIET * PIXELS_PER_MODULE; x < side - QUIET * PIXELS_PER_MODULE; x++) {
                if (dark(x / PIXELS_PER_MODULE - QUIET, y / PIXELS_PER_MODULE - QUIET)) {
                    grey[y * side + x] = 0;
                }
            }
        }
        GreyPng.write(file, grey, side, side);
    }
}
