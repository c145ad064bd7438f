package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The port against the prototype it was made from and against masks drawn by hand on real clips.
 *
 * <p>Source of the figures: the prototype's own run on the same frames (resources/reference/remaining.csv says how)
 * and its accuracy on the three masks: 0.776, 0.904 and 0.913.
 */
class PrototypeReferenceTest {

    /** Which kinds (columns of the region model) each value of a mask admits. */
    private static final int[][] ADMITS = {{0}, {1}, {2}, {3}, {0, 1}, {0, 3}};

    private static final Map<String, ViewSurvey> MASKED = new HashMap<>();

    @ParameterizedTest
    @CsvSource({"waterfall, 0.776", "foliage, 0.904", "beach, 0.913"})
    void regionsAreNoWorse(String name, double prototype) throws IOException {
        RegionMap map = masked(name).map();
        int[] mask = RealClips.mask(name, map.width(), map.height());
        int judged = 0;
        int right = 0;
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] < ADMITS.length) {
                judged++;
                int column = map.parts().get(map.partAt(p)).kind().column();
                for (int admitted : ADMITS[mask[p]]) {
                    right += column == admitted ? 1 : 0;
                }
            }
        }
        double accuracy = right / (double) judged;
        System.out.printf("regions of %s: accuracy %.3f (prototype %.3f)%n", name, accuracy, prototype);
        assertThat(accuracy).isGreaterThan(prototype - 0.02);
    }

    @ParameterizedTest
    @ValueSource(strings = {"waterfall", "foliage", "beach"})
    void whatIsLeftIsThatOfThePrototype(String name) throws IOException {
        ViewSurvey.Parts parts = masked(name).parts();
        LuminanceFrames frames = parts.frames();
        int[] mask = RealClips.mask(name, frames.width(), frames.height());
        try (var lines = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(getClass().getResourceAsStream("/reference/remaining.csv")),
                StandardCharsets.UTF_8))) {
            int rows = 0;
            for (String line :
                    lines.lines().filter(l -> l.startsWith(name + ",")).toList()) {
                String[] cells = line.split(",", -1);
                float[] share = new float[mask.length];
                for (int p = 0; p < share.length; p++) {
                    share[p] = mask[p] == Integer.parseInt(cells[1]) ? 1 : 0;
                }
                PixelSeries series = PixelSeries.where(share, frames.all(), frames.timesSeconds());
                ClipCurve curve =
                        ClipCurve.of(Variogram.of(series, parts.noise().at(series.mean())), false, Crests.NONE);
                double seconds = Double.parseDouble(cells[2]);
                double expected = Double.parseDouble(cells[3]);
                double ratio = Math.sqrt(curve.variance(seconds) / curve.varianceAtOnce());
                System.out.printf(
                        "%s %s s: %.4f (prototype %.4f, %+.2f %%)%n",
                        name, cells[2], ratio, expected, 100 * (ratio / expected - 1));
                assertThat(ratio).as("R(%s s)", cells[2]).isCloseTo(expected, within(0.04 * expected));
                rows++;
            }
            assertThat(rows).isEqualTo(8);
        }
    }

    /** Both were filmed by hand (data/README.md). */
    @Test
    void aHandHeldClipIsNeverCalledStill() throws IOException {
        assertThat(verdict("moving_camera/iago_sea.mp4")).isEqualTo(Camera.Verdict.CORRECTED);
        assertThat(verdict("moving_camera/colliding_waves.mp4")).isNotEqualTo(Camera.Verdict.STILL);
    }

    /** They stood on a tripod (data/README.md). */
    @ParameterizedTest
    @ValueSource(strings = {"waterfall/water.mp4", "beach/frames"})
    void aTripodIsCalledStill(String path) throws IOException {
        assertThat(verdict(path)).isEqualTo(Camera.Verdict.STILL);
    }

    private static ViewSurvey masked(String name) throws IOException {
        ViewSurvey survey = MASKED.get(name);
        if (survey == null) {
            survey = survey(RealClips.masked(name));
            MASKED.put(name, survey);
        }
        return survey;
    }

    private static Camera.Verdict verdict(String path) throws IOException {
        return survey(RealClips.read(RealClips.file(path), 0)).camera().verdict();
    }

    private static ViewSurvey survey(Clip clip) {
        return ViewSurvey.of(clip, Strokes.none(), RegionModel.standard(), Work.alone());
    }
}
