package ebblight.checks;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.demo.TrueExposure;
import ebblight.core.motion.Preview;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Previews of 8 to 240 s from 5 and 10 s of clip against the scene's own exposures, which are the source. A preview
 * earns its place only where it is nearer than the plain mean of the clip.
 */
class PreviewReferenceTest {

    private static final int WIDTH = 240;
    private static final List<Double> SECONDS = List.of(8.0, 15.0, 30.0, 60.0, 120.0, 240.0);

    @Test
    void previewsBeyondTheClipAreNearerThanItsMean() throws Exception {
        FilmedEvening evening = new FilmedEvening(WIDTH, 100);
        List<RgbPicture> truths = evening.view().exposures(0, SECONDS, 4, Work.alone());
        for (int frames : new int[] {50, 100}) {
            Preview previews = evening.previews(frames);
            for (int i = 0; i < SECONDS.size(); i++) {
                double seconds = SECONDS.get(i);
                double preview = TrueExposure.decibels(previews.render(seconds).picture(), truths.get(i));
                double mean = TrueExposure.decibels(previews.base(seconds), truths.get(i));
                System.out.printf(
                        "%3.0f s from %2d s of clip: %.1f dB, the clip's mean %.1f dB%n",
                        seconds, frames / 10, preview, mean);
                double least = seconds > 0.2 * frames ? 1 : -0.1;
                assertThat(preview - mean)
                        .as("%s s from %s frames", seconds, frames)
                        .isGreaterThan(least);
            }
        }
    }
}
