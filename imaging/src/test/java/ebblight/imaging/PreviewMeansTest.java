package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Means for many times in one pass against a plain mean of the frames that each time holds. */
class PreviewMeansTest {

    private static final int WIDTH = 31;
    private static final int HEIGHT = 17;
    private static final int SAMPLES = 3 * WIDTH * HEIGHT;
    private static final int FRAMES = 12;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void everyTimeIsTheMeanOfItsFrames() throws Exception {
        int[][] codes = new int[FRAMES][];
        for (int k = 0; k < FRAMES; k++) {
            codes[k] = TestPictures.random(SAMPLES, 255, k);
            TestPictures.write8(folder.resolve("f" + (10 + k) + ".png"), codes[k], WIDTH, HEIGHT);
        }
        FrameSource source = Inputs.open(List.of(folder), 10, true);
        double[] seconds = {0.1, 0.3, 0.8, 20};
        PreviewMeans means = PreviewMeans.of(source, 480, seconds, List.of(), new int[0], 480, Work.alone());
        assertThat(means.width()).isEqualTo(WIDTH);
        assertThat(means.height()).isEqualTo(HEIGHT);
        agrees(means.at(0.1), codes, 1);
        agrees(means.at(0.35), codes, 3);
        agrees(means.at(0.8), codes, 8);
        agrees(means.at(30), codes, FRAMES);
        agrees(means.ofAll(), codes, FRAMES);
    }

    /** Each frame and the mean are rounded to 16 bits once. */
    private static void agrees(RgbPicture mean, int[][] codes, int frames) {
        for (int i = 0; i < SAMPLES; i++) {
            double sum = 0;
            for (int k = 0; k < frames; k++) {
                sum += PlainStack.linear(codes[k][i] / 255.0);
            }
            assertThat((double) mean.plane(i % 3)[i / 3]).isCloseTo(sum / frames, within(1.1 / 65535));
        }
    }
}
