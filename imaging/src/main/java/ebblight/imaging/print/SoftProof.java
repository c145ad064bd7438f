package ebblight.imaging.print;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.finish.Colours;
import java.util.ArrayList;
import java.util.List;

/**
 * How a printer will show a picture: to its profile by an intent, and back to what the eye sees of the print.
 *
 * @param light what the print shows, linear sRGB
 * @param movedFraction share of the picture whose colour moves by more than 6 units of L*a*b* (CIE 1976)
 * @param joinedSteps steps of grey, in half stops below white, that the print does not tell from the next lighter one
 * @param darkest L* of the darkest black that the print reaches
 */
public record SoftProof(RgbPicture light, double movedFraction, List<Double> joinedSteps, double darkest) {

    private static final int PIECE = 1 << 16;
    private static final double MOVED = 6;
    /** Steps less than so many L* apart are one to the eye. */
    private static final double ALIKE = 0.7;

    private static final int HALF_STOPS = 16;
    private static final double XYZ_SCALE = 32768.0;
    private static final double[] D50 = {0.9642, 1, 0.8249};

    /** Proofs a picture as it will be written. */
    public static SoftProof of(CodedPicture picture, PrinterProfile printer, PrinterProfile.Intent intent, Work work) {
        int n = picture.width() * picture.height();
        RgbPicture light = RgbPicture.black(picture.width(), picture.height());
        Colours from = Colours.of(picture.profile());
        Colours screen = Colours.of(IccProfile.srgb());
        float[] linear = picture.profile().curve().table(16);
        int pieces = (n + PIECE - 1) / PIECE;
        long[] moved = new long[pieces];
        work.forEach(pieces, k -> {
            int first = k * PIECE;
            int count = Math.min(PIECE, n - first);
            short[] codes = new short[3 * count];
            System.arraycopy(picture.codes(), 3 * first, codes, 0, codes.length);
            double[][] seen = seen(codes, count, picture.profile(), printer, intent);
            double[] before = new double[3];
            double[] after = new double[3];
            double[] rgb = new double[3];
            for (int i = 0; i < count; i++) {
                from.toLab(
                        linear[codes[3 * i] & 0xFFFF],
                        linear[codes[3 * i + 1] & 0xFFFF],
                        linear[codes[3 * i + 2] & 0xFFFF],
                        before);
                screen.ofXyz(seen[0][i], seen[1][i], seen[2][i], rgb);
                screen.toLab(rgb[0], rgb[1], rgb[2], after);
                double dl = before[0] - after[0];
                double da = before[1] - after[1];
                double db = before[2] - after[2];
                moved[k] += dl * dl + da * da + db * db > MOVED * MOVED ? 1 : 0;
                for (int c = 0; c < 3; c++) {
                    light.plane(c)[first + i] = (float) Math.max(0, Math.min(1, rgb[c]));
                }
            }
        });
        long all = 0;
        for (long each : moved) {
            all += each;
        }
        double[] steps = steps(picture.profile(), printer, intent);
        List<Double> joined = new ArrayList<>();
        for (int k = 1; k < HALF_STOPS; k++) {
            if (steps[k - 1] - steps[k] < ALIKE) {
                joined.add(k / 2.0);
            }
        }
        return new SoftProof(light, (double) all / n, joined, steps[HALF_STOPS]);
    }

    /** XYZ that the print shows, under D50; with the white of the paper for the absolute intent. */
    private static double[][] seen(
            short[] codes, int count, IccProfile profile, PrinterProfile printer, PrinterProfile.Intent intent) {
        short[] device = printer.fromSource(profile.bytes(), codes, count, intent);
        short[] xyz = printer.toXyz(device, count);
        double[] white = printer.white();
        double[][] seen = new double[3][count];
        for (int c = 0; c < 3; c++) {
            double scale = intent == PrinterProfile.Intent.ABSOLUTE ? white[c] / D50[c] : 1;
            for (int i = 0; i < count; i++) {
                seen[c][i] = (xyz[3 * i + c] & 0xFFFF) / XYZ_SCALE * scale;
            }
        }
        return seen;
    }

    /** L* that the print shows of white, half a stop less, and so on; black last. */
    private static double[] steps(IccProfile profile, PrinterProfile printer, PrinterProfile.Intent intent) {
        short[] codes = new short[3 * (HALF_STOPS + 1)];
        for (int k = 0; k < HALF_STOPS; k++) {
            short code = (short) Math.round(65535 * profile.curve().toCode(StrictMath.pow(2, -k / 2.0)));
            codes[3 * k] = code;
            codes[3 * k + 1] = code;
            codes[3 * k + 2] = code;
        }
        double[][] seen = seen(codes, HALF_STOPS + 1, profile, printer, intent);
        double[] steps = new double[HALF_STOPS + 1];
        for (int k = 0; k <= HALF_STOPS; k++) {
            steps[k] = Colours.lightness(seen[1][k]);
        }
        return steps;
    }

    /** The picture to look at, in sRGB. */
    public CodedPicture picture(Work work) {
        return CodedPicture.srgb(light, work);
    }
}
