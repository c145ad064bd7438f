package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A rock wall under a camera that stood, shook, was carried away, or faded in. */
class ViewSurveyTest {

    private static final int WIDTH = Coast.WIDTH;
    private static final int HEIGHT = Coast.HEIGHT;
    private static final double[] WALL = Plain.noise(3 * WIDTH, HEIGHT, 2, 31);

    @Test
    void aTripodStandsStill() {
        ViewSurvey survey = survey(wall(0, 1, 1));
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.STILL);
        assertThat(survey.camera().largestPixels()).isLessThan(0.05);
        assertThat(survey.placements()).isEmpty();
        assertThat(survey.map().parts()).extracting(RegionMap.Part::id).containsExactly("fixed-1");
    }

    /** To and fro by 1.5 px: put back in place, and cut by the farthest frame, 1.5 px up to 2, and one. */
    @Test
    void aShakenCameraIsPutBack() {
        Clip shaken = wall(1.5, 1, 1);
        ViewSurvey survey = survey(shaken);
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.CORRECTED);
        assertThat(survey.placements()).hasSize(12);
        double middle = 1.5 * Math.sin(6);
        for (int i = 0; i < 12; i++) {
            assertThat(survey.placements()[i].dx()).isCloseTo(1.5 * Math.sin(i) - middle, within(0.15));
            assertThat(survey.placements()[i].dy()).isCloseTo(0, within(0.15));
        }
        assertThat(survey.clip().width()).isEqualTo(WIDTH - 2 * survey.crop());
        assertThat(survey.crop()).isBetween(2, 4);
        assertThat(unlike(survey.clip())).isLessThan(0.3 * unlike(shaken));
    }

    /** Mean difference of the frames from the first. */
    private static double unlike(Clip clip) {
        float[] first = new float[clip.width() * clip.height()];
        float[] later = new float[first.length];
        clip.luminance(0, first);
        double sum = 0;
        for (int i = 1; i < clip.frames(); i++) {
            clip.luminance(i, later);
            for (int p = 0; p < first.length; p++) {
                sum += Math.abs((double) later[p] - first[p]);
            }
        }
        return sum / first.length / (clip.frames() - 1);
    }

    @Test
    void framesOfAFadeAreLeftOut() {
        ViewSurvey survey = survey(wall(0, 0.1, 1));
        assertThat(survey.framesLeftOut()).isEqualTo(2);
        assertThat(survey.clip().frames()).isEqualTo(10);
        assertThat(survey.clip().timeSeconds(0)).isEqualTo(2);
        assertThat(survey(wall(0, 0.6, 1)).framesLeftOut()).isZero();
    }

    /** A stroke over the right half makes it leaves; without it, it is rock again. */
    @Test
    void strokesPartThePictureAnew() {
        ViewSurvey plain = survey(wall(0, 1, 1));
        Strokes strokes = new Strokes(List.of(new Strokes.Stroke(
                Kind.SWAYING, List.of(new Strokes.Point(0.875, 0), new Strokes.Point(0.875, 1)), 0.25)));
        ViewSurvey drawn = plain.with(strokes, model(), Work.alone());
        assertThat(drawn.map().parts()).extracting(RegionMap.Part::id).containsExactly("fixed-1", "swaying-1");
        assertThat(drawn.regions().part(Kind.SWAYING)).isCloseTo(0.25, within(0.05));
        assertThat(drawn.with(Strokes.none(), model(), Work.alone()).map().parts())
                .hasSize(1);
    }

    /** Eight hundredths of the width are the most: beyond, nothing is told of the parts. */
    @Test
    void aViewThatTurnsAwayIsRefused() {
        ViewSurvey survey = survey(wall(9, 1, 1));
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.REFUSED);
        assertThat(survey.hasParts()).isFalse();
        assertThat(survey.placements()).isEmpty();
        assertThat(survey.crop()).isZero();
        assertThatThrownBy(survey::map).hasMessageContaining("moved too far");
        assertThat(survey.with(Strokes.none(), Coast.model(), Work.alone()).hasParts())
                .isFalse();
    }

    /** A stop in a minute, on a wall. */
    @Test
    void lightThatFadesIsTold() {
        double[] wall = Plain.noise(WIDTH, HEIGHT, 2, 32);
        ViewSurvey survey = survey(Plain.clip(
                WIDTH, HEIGHT, 12, 1, (x, y, t) -> (0.2 + 0.8 * (wall[y * WIDTH + x] - 0.3)) * Math.pow(2, -t / 60)));
        assertThat(survey.fadingStopsPerMinute()).isCloseTo(1, within(0.02));
    }

    @Test
    void oneFrameIsNoView() {
        Clip one = wall(0, 1, 1)
                .only(new boolean[] {true, false, false, false, false, false, false, false, false, false, false, false
                });
        assertThatThrownBy(() -> survey(one)).hasMessageContaining("two frames or more, had 1");
    }

    /** Twelve frames a second apart, moved by {@code shake} sin i; the first two and the rest at a share of the light. */
    private static Clip wall(double shake, double firstLight, double light) {
        return Plain.clip(WIDTH, HEIGHT, 12, 1, (x, y, t) -> {
            double at = x - shake * Math.sin(t) + WIDTH;
            double wall = Plain.between(WALL, 3 * WIDTH, HEIGHT, at, y);
            return (t < 2 ? firstLight : light) * Math.max(0.05, Math.min(0.95, 0.4 + 4 * (wall - 0.5)));
        });
    }

    private static ViewSurvey survey(Clip clip) {
        return ViewSurvey.of(clip, Strokes.none(), model(), Work.alone());
    }

    /** Everything stands. */
    private static RegionModel model() {
        double[] ones = new double[RegionModel.FEATURES];
        Arrays.fill(ones, 1);
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[RegionModel.FEATURES][Kind.FIXED.column()] = 5;
        return RegionModel.of(new double[RegionModel.FEATURES], ones, weights);
    }
}
