package ebblight.imaging.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.imaging.OtherProgram;
import java.nio.file.Files;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** SSIM and PSNR of scikit-image 0.19.3 on pictures that formulas make (ssim_oracle.json beside the real files). */
class LikenessReferenceTest {

    private static final int SIDE = 64;

    private interface Pixel {
        double at(int x, int y);
    }

    private static float[] plane(Pixel pixel) {
        float[] plane = new float[SIDE * SIDE];
        for (int p = 0; p < plane.length; p++) {
            plane[p] = (float) pixel.at(p % SIDE, p / SIDE);
        }
        return plane;
    }

    private static double wave(int x, int y) {
        return Math.max(0, Math.min(255, Math.floor(128 + 60 * Math.sin(x / 5.0) + 50 * Math.cos(y / 7.0) + 0.5)));
    }

    private static int inside(int x) {
        return Math.max(0, Math.min(SIDE - 1, x));
    }

    private static double sum(float[] plane) {
        double sum = 0;
        for (float v : plane) {
            sum += v;
        }
        return sum;
    }

    @Test
    void asScikitImageHasIt() throws Exception {
        String oracle = Files.readString(OtherProgram.shared("oracles").resolve("ssim_oracle.json"));
        float[] a = plane(LikenessReferenceTest::wave);
        float[][] others = {
            plane((x, y) -> wave(x, y) + (7 * x + 13 * y) % 11 - 5),
            plane((x, y) -> Math.floor(0.8 * wave(x, y) + 20.5)),
            plane((x, y) -> wave((x + SIDE - 1) % SIDE, y)),
            plane((x, y) -> Math.floor((wave(inside(x - 2), y)
                                    + 4 * wave(inside(x - 1), y)
                                    + 6 * wave(x, y)
                                    + 4 * wave(inside(x + 1), y)
                                    + wave(inside(x + 2), y))
                            / 16
                    + 0.5))
        };
        String[] names = {"B noise", "C contrast 0.8+20", "D shift 1px", "F binomial blur"};
        assertThat(sum(a)).isEqualTo(533_690); // the sums that come with the oracle
        assertThat(sum(others[0])).isEqualTo(533_682);
        assertThat(sum(others[1])).isEqualTo(508_864);
        assertThat(sum(others[3])).isEqualTo(533_749);
        for (int k = 0; k < names.length; k++) {
            assertThat(Likeness.ssim(a, others[k], SIDE, SIDE))
                    .as(names[k])
                    .isCloseTo(known(oracle, names[k], "ssim_gauss11"), within(1e-5));
            assertThat(Likeness.decibels(a, others[k]))
                    .as(names[k])
                    .isCloseTo(known(oracle, names[k], "psnr"), within(1e-5));
        }
        assertThat(Likeness.ssim(a, a, SIDE, SIDE)).isEqualTo(1);
    }

    private static double known(String oracle, String name, String value) {
        Matcher m = Pattern.compile(Pattern.quote("\"" + value + "\"") + ": ([0-9.]+)")
                .matcher(oracle.substring(oracle.indexOf("\"" + name + "\"")));
        assertThat(m.find()).isTrue();
        return Double.parseDouble(m.group(1));
    }
}
