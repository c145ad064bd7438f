package ebblight.imaging.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.Threads;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Laws of sizes: flat stays flat, light is kept, edges stay where they are. */
class ResizedTest {

    private static RgbPicture waves(int width, int height, double period) {
        RgbPicture picture = RgbPicture.black(width, height);
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < width * height; p++) {
                picture.plane(c)[p] = (float) (0.4 + 0.3 * Math.sin(2 * Math.PI * (p % width + 0.5) / period));
            }
        }
        return picture;
    }

    @Test
    void flatStaysFlat() {
        RgbPicture flat = RgbPicture.black(37, 23);
        Arrays.fill(flat.green(), 0.37f);
        for (int[] size : new int[][] {{11, 7}, {80, 61}, {36, 23}}) {
            for (float v : Resized.to(flat, size[0], size[1], Work.alone()).green()) {
                assertThat(v).isCloseTo(0.37f, within(1e-5f));
            }
        }
    }

    /** Black and white pixels seen from afar are half the light, not half the code. */
    @Test
    void aChequerBecomesHalfTheLight() {
        RgbPicture chequer = RgbPicture.black(200, 200);
        for (int p = 0; p < 40_000; p++) {
            chequer.green()[p] = (p % 200 + p / 200) % 2;
        }
        RgbPicture small = Resized.to(chequer, 40, 40, Work.alone());
        assertThat(small.green()[20 * 40 + 20]).isCloseTo(0.5f, within(0.005f));
    }

    /** What the smaller size can hold keeps its contrast and its place; what it cannot goes to grey, without moiré. */
    @Test
    void wavesBelowTheLimitStayAndWavesBeyondItGo() {
        RgbPicture slow = Resized.to(waves(800, 16, 40), 200, 4, Work.alone());
        for (int x = 20; x < 180; x++) {
            double truth = 0.4 + 0.3 * Math.sin(2 * Math.PI * (x + 0.5) / 10);
            assertThat(slow.green()[200 + x]).isCloseTo((float) truth, within(0.015f));
        }
        RgbPicture fine = Resized.to(waves(800, 16, 5), 200, 4, Work.alone()); // 0.8 pixels of the small one
        for (int x = 20; x < 180; x++) {
            assertThat(fine.green()[200 + x]).isCloseTo(0.4f, within(0.015f));
        }
        RgbPicture large = Resized.to(waves(200, 16, 20), 500, 40, Work.alone());
        for (int x = 40; x < 460; x++) {
            double truth = 0.4 + 0.3 * Math.sin(2 * Math.PI * (x + 0.5) / 50);
            assertThat(large.green()[20 * 500 + x]).isCloseTo((float) truth, within(0.01f));
        }
    }

    @Test
    void threadsChangeNothing() {
        RgbPicture from = waves(301, 97, 7.3);
        float[] alone = Resized.to(from, 120, 40, Work.alone()).red();
        try (Threads three = new Threads(3)) {
            assertThat(Resized.to(from, 120, 40, three).red()).isEqualTo(alone);
        }
    }
}
