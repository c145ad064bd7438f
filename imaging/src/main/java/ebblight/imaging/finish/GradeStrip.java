package ebblight.imaging.finish;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A test strip laid on the picture: five cut pieces side by side, half a grade apart, the middle one at the grade of the
 * finish. Each piece has as many notches at its lower edge as its place in the row.
 *
 * @param grades of the pieces from the left
 */
public record GradeStrip(CodedPicture picture, List<Double> grades) {

    private static final int LONG_SIDE = 1600;
    private static final int PIECES = 5;
    private static final double STEP = 0.5;
    private static final int GAP = 10;
    private static final int NOTCH = 9;
    private static final short PAPER = (short) 62_000;

    /** Makes the strip on a copy of at most 1600 pixels; the picture stays as it is. */
    public static GradeStrip of(RgbPicture light, IccProfile profile, Finish finish, PartTones parts, Work work) {
        double first = Math.max(0, Math.min(5 - (PIECES - 1) * STEP, finish.grade() - (PIECES - 1) * STEP / 2));
        Double[] grades = new Double[PIECES];
        CodedPicture[] made = new CodedPicture[PIECES];
        for (int k = 0; k < PIECES; k++) {
            grades[k] = first + k * STEP;
            Finish at = finish.withGrade(grades[k]);
            made[k] = Finisher.finish(small(light), profile, Optional.empty(), at, parts, work)
                    .picture();
        }
        return new GradeStrip(laid(made, profile), List.of(grades));
    }

    private static RgbPicture small(RgbPicture light) {
        double scale = Math.min(1, (double) LONG_SIDE / Math.max(light.width(), light.height()));
        int w = Math.max(1, (int) Math.round(scale * light.width()));
        int h = Math.max(1, (int) Math.round(scale * light.height()));
        RgbPicture small = RgbPicture.black(w, h);
        for (int c = 0; c < 3; c++) {
            Resample.area(light.plane(c), light.width(), light.height(), small.plane(c), w, h);
        }
        return small;
    }

    private static CodedPicture laid(CodedPicture[] made, IccProfile profile) {
        int w = made[0].width();
        int h = made[0].height();
        int wide = w + (PIECES - 1) * GAP;
        int high = h + 2 * NOTCH;
        short[] codes = new short[3 * wide * high];
        Arrays.fill(codes, PAPER);
        for (int k = 0; k < PIECES; k++) {
            int from = k * w / PIECES;
            int to = (k + 1) * w / PIECES;
            for (int y = 0; y < high; y++) {
                for (int x = from; x < to; x++) {
                    boolean notch = y >= h && notched(x - from, k + 1);
                    for (int c = 0; c < 3; c++) {
                        int at = 3 * (y * wide + x + k * GAP) + c;
                        codes[at] = y < h ? made[k].codes()[3 * (y * w + x) + c] : notch ? 0 : PAPER;
                    }
                }
            }
        }
        return new CodedPicture(wide, high, codes, profile);
    }

    private static boolean notched(int x, int count) {
        return x >= NOTCH && x < NOTCH + 2 * NOTCH * count - NOTCH && (x - NOTCH) / NOTCH % 2 == 0;
    }
}
