package ebblight.core.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: LittleCMS 2.14 transicc (Debian liblcms2-utils), sRGB to Lab of D50; tolerance 0.01 neutral, 0.1 colour. */
class CieLabReferenceTest {

    @ParameterizedTest
    @CsvSource({
        "118,118,118,49.637,0,0,0.01",
        "128,128,128,53.585,0,0,0.01",
        "255,0,0,54.29,80.81,69.89,0.1",
        "10,20,30,5.85,-1.50,-8.25,0.1"
    })
    void agreesWithLittleCms(int red, int green, int blue, double lightness, double a, double b, double tolerance) {
        CieLab lab = CieLab.ofLinearSrgb(linear(red), linear(green), linear(blue));
        assertThat(lab.lightness()).isCloseTo(lightness, within(tolerance));
        assertThat(lab.a()).isCloseTo(a, within(Math.max(0.02, tolerance)));
        assertThat(lab.b()).isCloseTo(b, within(Math.max(0.02, tolerance)));
    }

    /** IEC 61966-2-1. */
    private static double linear(int code) {
        double c = code / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
