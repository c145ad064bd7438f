package ebblight.app.report;

import ebblight.core.motion.StripCrop;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.Srgb;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The same patch of a part at a row of times, side by side: true crops, pixel for pixel. Faint patches are raised in
 * contrast, all by the same factor, and say by how much.
 */
public final class StripSprite {

    public static final int PIECE_WIDTH = 170;
    public static final int PIECE_HEIGHT = 92;
    private static final double WANTED_CONTRAST = 0.14;
    private static final double MOST_RAISED = 3;

    private final byte[] codes;
    private final int pieces;
    private double raised = 1;

    public StripSprite(int pieces) {
        this.pieces = pieces;
        codes = new byte[3 * pieces * PIECE_WIDTH * PIECE_HEIGHT];
    }

    /** Cuts the patch out of the picture at one time; a picture with fewer pixels is drawn larger. */
    public void add(int piece, RgbPicture picture, StripCrop crop) {
        double left = crop.left() * picture.width();
        double top = crop.top() * picture.height();
        double sx = crop.width() * picture.width() / PIECE_WIDTH;
        double sy = crop.height() * picture.height() / PIECE_HEIGHT;
        for (int y = 0; y < PIECE_HEIGHT; y++) {
            double v = Math.max(0, Math.min(picture.height() - 1.001, top + (y + 0.5) * sy - 0.5));
            for (int x = 0; x < PIECE_WIDTH; x++) {
                double u = Math.max(0, Math.min(picture.width() - 1.001, left + (x + 0.5) * sx - 0.5));
                int at = 3 * (y * pieces * PIECE_WIDTH + piece * PIECE_WIDTH + x);
                for (int c = 0; c < 3; c++) {
                    codes[at + c] =
                            (byte) Math.round(255 * Srgb.code(between(picture.plane(c), picture.width(), u, v)));
                }
            }
        }
    }

    private static double between(float[] plane, int width, double u, double v) {
        int row = (int) v;
        int p = row * width + (int) u;
        double ax = u - (int) u;
        double ay = v - row;
        return (1 - ay) * ((1 - ax) * plane[p] + ax * plane[p + 1])
                + ay * ((1 - ax) * plane[p + width] + ax * plane[p + width + 1]);
    }

    /** Raises all pieces by what the roughest one of the first and last needs to be seen. */
    public void raise() {
        double spread = Math.max(deviation(0), deviation(pieces - 1));
        double wanted = spread <= 0 ? 1 : WANTED_CONTRAST * 255 / spread;
        raised = Math.rint(20 * Math.max(1, Math.min(MOST_RAISED, wanted))) / 20;
        if (raised > 1) {
            double[] mean = new double[3];
            for (int i = 0; i < codes.length; i++) {
                mean[i % 3] += (codes[i] & 0xFF) * 3.0 / codes.length;
            }
            for (int i = 0; i < codes.length; i++) {
                double v = mean[i % 3] + raised * ((codes[i] & 0xFF) - mean[i % 3]);
                codes[i] = (byte) Math.round(Math.max(0, Math.min(255, v)));
            }
        }
    }

    private double deviation(int piece) {
        double squares = 0;
        double sum = 0;
        for (int y = 0; y < PIECE_HEIGHT; y++) {
            for (int x = 0; x < PIECE_WIDTH; x++) {
                double v = codes[3 * (y * pieces * PIECE_WIDTH + piece * PIECE_WIDTH + x) + 1] & 0xFF;
                sum += v;
                squares += v * v;
            }
        }
        int n = PIECE_WIDTH * PIECE_HEIGHT;
        return Math.sqrt(Math.max(0, squares / n - sum / n * sum / n));
    }

    /** Contrast of a piece against the first one, before both are raised. */
    public double share(int piece) {
        double first = deviation(0);
        return first <= 0 ? 1 : deviation(piece) / first;
    }

    public double raised() {
        return raised;
    }

    public byte[] jpeg(Work work) throws IOException {
        work.check();
        return JpegWriter.encode(
                CodedPicture.srgb8(pieces * PIECE_WIDTH, PIECE_HEIGHT, codes),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), pieces, List.of(), "Test strip"));
    }
}
