package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A frame of 0.25 s and one of 4 s of the same water, made as the means that they are; rock below stands. */
class StillsPreviewTest {

    private static final double[] SECONDS = {Coast.SPACING, 4};
    private final Clip clip = clip();
    private final Preview preview = preview();

    @Test
    void theEndsAreTheFramesThemselves() {
        assertThat(preview.lengthSeconds()).isEqualTo(4);
        assertThat(preview.framesFor(100)).isEqualTo(1);
        float[] plane = new float[Coast.WIDTH * Coast.HEIGHT];
        clip.channel(0, 1, plane);
        assertThat(preview.render(0.25).picture().green()).containsExactly(plane, within(2e-3f));
        assertThat(preview.base(0.25).green()).isEqualTo(plane);
        clip.channel(1, 1, plane);
        assertThat(preview.render(4).picture().green()).containsExactly(plane, within(2e-3f));
        assertThat(preview.base(50).green()).isEqualTo(plane);
        assertThat(preview.render(4).fromFrames()).isFalse();
        assertThatThrownBy(() -> preview.render(0)).hasMessageContaining("more than 0 s");
    }

    /** √(0.25 · 4) = 1 s divides what starts from either frame. */
    @Test
    void theNearerFrameIsTheBase() {
        assertThat(preview.baseFrame(0.99)).isZero();
        assertThat(preview.baseFrame(1.01)).isEqualTo(1);
        assertThat(preview.baseFrame(100)).isEqualTo(1);
    }

    @Test
    void longerIsSmootherAndRockStays() {
        double last = Double.POSITIVE_INFINITY;
        for (double seconds : new double[] {0.25, 0.5, 1, 2, 4, 16, 64}) {
            Preview.Exposure shown = preview.render(seconds);
            double[] water = Coast.moments(shown.picture().green(), 3, 20);
            assertThat(water[1]).isLessThan(last);
            assertThat(water[0]).isCloseTo(Coast.WATER, within(0.02));
            last = water[1];
            float[] rock = new float[Coast.WIDTH * Coast.HEIGHT];
            clip.channel(1, 1, rock);
            for (int p = 40 * Coast.WIDTH; p < rock.length; p++) {
                assertThat(shown.picture().green()[p]).isCloseTo(rock[p], within(3e-3f));
                assertThat(shown.detail()[p]).isCloseTo(1, within(0.01f));
            }
            assertThat(shown.detail()[8 * Coast.WIDTH + 30] < 0.99f).isEqualTo(seconds > 4);
        }
    }

    /** Sixteen times as long a time keeps a quarter or a little more, for what stands in one frame seems to stand. */
    @Test
    void beyondTheLongestTheTextureShrinks() {
        double four = Coast.moments(preview.render(4).picture().green(), 3, 20)[1];
        double sixtyFour = Coast.moments(preview.render(64).picture().green(), 3, 20)[1];
        assertThat(sixtyFour / four).isBetween(0.2, 0.6);
    }

    private static Clip clip() {
        double[][] water = Coast.water(60);
        double[] rock = Coast.texture(22);
        return Plain.clip(Coast.WIDTH, Coast.HEIGHT, 2, 30, (x, y, t) -> {
            int p = y * Coast.WIDTH + x;
            if (y >= Coast.HEIGHT / 2) {
                return Math.max(0.02, 0.25 + 0.08 * rock[p]);
            }
            double mean = 0;
            for (int i = 40; i < 56; i++) {
                mean += water[i][p] / 16;
            }
            return Coast.WATER + Coast.DEVIATION * (t > 0 ? mean : water[0][p]);
        });
    }

    private Preview preview() {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        Arrays.fill(weights[RegionModel.FEATURES], -99);
        weights[7][Kind.FLOWING.column()] = -6;
        weights[7][Kind.FIXED.column()] = 6;
        weights[RegionModel.FEATURES][Kind.FLOWING.column()] = 0;
        weights[RegionModel.FEATURES][Kind.FIXED.column()] = 0;
        ViewSurvey survey = ViewSurvey.of(clip, Strokes.none(), Coast.byRow(weights), Work.alone());
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.STILL);
        Measurement measured = Measurement.of(survey, Stills.of(SECONDS), Work.alone());
        assertThat(measured.ofStills()).isTrue();
        return measured.preview(Work.alone());
    }
}
