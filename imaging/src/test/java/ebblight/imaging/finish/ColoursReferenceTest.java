package ebblight.imaging.finish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.imaging.IccProfile;
import ebblight.imaging.OtherProgram;
import ebblight.imaging.TransferCurve;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** sRGB (IEC 61966-2-1, from memory) and L*a*b* against the formulas of CIE 15 and against LittleCMS 2.14. */
class ColoursReferenceTest {

    private static final Colours SRGB = Colours.of(IccProfile.srgb());

    /** Worked from the standard's formulas by hand calculator. */
    @Test
    void theCurveOfSrgb() {
        assertThat(TransferCurve.SRGB.toCode(0.0031308)).isCloseTo(0.04045, within(1e-5));
        assertThat(TransferCurve.SRGB.toCode(0.18)).isCloseTo(0.461356, within(1e-6));
        double[][] decoded = {
            {1, .00030353},
            {10, .00303527},
            {11, .00334654},
            {64, .05126946},
            {118, .18116424},
            {128, .2158605},
            {188, .50288646},
            {200, .57758044}
        };
        for (double[] each : decoded) {
            assertThat(TransferCurve.SRGB.toLinear(each[0] / 255)).isCloseTo(each[1], within(1e-6));
        }
    }

    /** L* = 116 Y^⅓ − 16, or 24389/27 Y below 216/24389 (CIE 15). */
    @Test
    void lightness() {
        double[][] known = {
            {.001, .9033}, {.01, 8.9914}, {.05, 26.7348}, {.18, 49.4961}, {.184187, 50}, {.5, 76.0693}, {1, 100}
        };
        for (double[] each : known) {
            assertThat(Colours.lightness(each[0])).isCloseTo(each[1], within(1e-4));
            assertThat(Colours.luminanceOf(each[1])).isCloseTo(each[0], within(1e-5));
        }
    }

    /** transicc of LittleCMS 2.14, sRGB to Lab under D50, relative colorimetric. */
    @Test
    void labOfSrgbAsLittleCmsHasIt() {
        double[][] known = {
            {118, 118, 118, 49.637, 0, 0},
            {128, 128, 128, 53.585, 0, 0},
            {255, 0, 0, 54.29, 80.81, 69.89},
            {10, 20, 30, 5.85, -1.50, -8.25}
        };
        for (double[] each : known) {
            double[] lab = new double[3];
            double[] rgb = new double[3];
            for (int c = 0; c < 3; c++) {
                rgb[c] = TransferCurve.SRGB.toLinear(each[c] / 255);
            }
            SRGB.toLab(rgb[0], rgb[1], rgb[2], lab);
            boolean neutral = each[0] == each[1];
            assertThat(lab[0]).isCloseTo(each[3], within(neutral ? 0.01 : 0.1));
            assertThat(lab[1]).isCloseTo(each[4], within(neutral ? 0.02 : 0.1));
            assertThat(lab[2]).isCloseTo(each[5], within(neutral ? 0.02 : 0.1));
        }
    }

    @Test
    void labThereAndBack() {
        double[] lab = new double[3];
        double[] rgb = new double[3];
        for (double r = 0; r <= 1; r += 0.125) {
            for (double g = 0; g <= 1; g += 0.125) {
                for (double b = 0; b <= 1; b += 0.125) {
                    SRGB.toLab(r, g, b, lab);
                    SRGB.toRgb(lab[0], lab[1], lab[2], rgb);
                    assertThat(rgb[0]).isCloseTo(r, within(1e-9));
                    assertThat(rgb[1]).isCloseTo(g, within(1e-9));
                    assertThat(rgb[2]).isCloseTo(b, within(1e-9));
                }
            }
        }
    }

    /** Primaries as ExifTool reads them from the profile. */
    @Test
    void theProfilesPrimariesAreReadAsExifToolReadsThem() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Path file = Path.of("/usr/share/color/icc/ghostscript/a98.icc");
        Assumptions.assumeTrue(Files.exists(file), "no profile at " + file);
        double[] m = IccProfile.read(Files.readAllBytes(file)).orElseThrow().toXyz();
        String[] tags = {"RedMatrixColumn", "GreenMatrixColumn", "BlueMatrixColumn"};
        for (int c = 0; c < 3; c++) {
            String[] told = OtherProgram.output("exiftool", "-s3", "-ICC_Profile:" + tags[c], file.toString())
                    .strip()
                    .split(" ", -1);
            for (int r = 0; r < 3; r++) {
                assertThat(m[3 * r + c]).isCloseTo(Double.parseDouble(told[r]), within(1e-4));
            }
        }
    }
}
