package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** All of the measuring on the drawn {@link Coast}, whose making is the truth (G. I. Taylor 1922 for the water). */
class MeasurementTest {

    private final ViewSurvey survey = Coast.survey();

    private Measurement measured() {
        return Measurement.of(survey, Work.alone());
    }

    private Preview preview() {
        return measured().preview(Work.alone());
    }

    @Test
    void theViewIsWhatWasDrawn() {
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.STILL);
        assertThat(survey.hasParts()).isTrue();
        assertThat(survey.crop()).isZero();
        assertThat(survey.placements()).isEmpty();
        assertThat(survey.framesLeftOut()).isZero();
        assertThat(survey.fadingStopsPerMinute()).isCloseTo(0, within(0.02));
        assertThat(survey.map().parts())
                .extracting(RegionMap.Part::id)
                .containsExactlyInAnyOrder("drifting-1", "flowing-1", "fixed-1");
        assertThat(survey.regions().part(Kind.FIXED)).isCloseTo(1 / 3.0, within(0.05));
        // drawn between the rows 15 and 16
        assertThat(survey.horizon().orElseThrow().left()).isCloseTo(15.5, within(0.5));
        assertThat(survey.horizon().orElseThrow().right()).isCloseTo(15.5, within(0.5));
    }

    @Test
    void timesAreWholeStops() {
        double[] listed = Measurement.listedSeconds();
        assertThat(listed).hasSize(14);
        assertThat(listed[0]).isEqualTo(1 / 8.0);
        for (int k = 1; k < 13; k++) {
            assertThat(listed[k]).isEqualTo(2 * listed[k - 1]);
        }
        assertThat(listed[13]).isEqualTo(960);
    }

    /** R(T) = √(2τ/T (1 − τ/T (1 − exp(−T/τ)))), texture = deviation over mean. */
    @Test
    void waterFadesAsItsMemory() {
        RegionMotion water = region(Kind.FLOWING);
        assertThat(water.texture())
                .isCloseTo(Coast.DEVIATION / Coast.WATER, within(0.15 * Coast.DEVIATION / Coast.WATER));
        assertThat(water.flags().seen()).isTrue();
        assertThat(water.flags().borrowed()).isFalse();
        assertThat(water.flags().breakers()).isFalse();
        assertThat(water.velocity()).isEmpty();
        assertThat(water.remaining())
                .extracting(Remaining::seconds)
                .hasSize(14)
                .first()
                .isEqualTo(0.125);
        for (double seconds : new double[] {1, 2, 4, 30}) {
            double x = Coast.MEMORY / seconds;
            double truth = Math.sqrt(2 * x * (1 - x * (1 - Math.exp(-1 / x))));
            Remaining left = water.at().apply(seconds);
            assertThat(left.ratio()).as("%s s", seconds).isCloseTo(truth, within(0.2 * truth));
            assertThat(truth).isBetween(0.9 * left.low(), 1.1 * left.high());
        }
        assertThat(water.correlationSeconds()).isCloseTo(Coast.MEMORY, within(0.4 * Coast.MEMORY));
        Measurement measured = measured();
        assertThat(measured.repeatsAfterSeconds()).isZero();
        assertThat(measured.ofStills()).isFalse();
    }

    @Test
    void cloudsDrift() {
        RegionMotion.Velocity velocity = region(Kind.DRIFTING).velocity().orElseThrow();
        assertThat(velocity.x()).isCloseTo(Coast.DRIFT, within(0.1 * Coast.DRIFT));
        assertThat(velocity.y()).isCloseTo(0, within(0.1 * Coast.DRIFT));
        assertThat(velocity.speed()).isCloseTo(Math.hypot(velocity.x(), velocity.y()), within(1e-12));
        assertThat(velocity.relativeError()).isBetween(0.002, 1.0);
        assertThat(region(Kind.DRIFTING).remaining()).isEmpty();
    }

    @Test
    void rockStands() {
        RegionMotion rock = region(Kind.FIXED);
        assertThat(rock.velocity()).isEmpty();
        assertThat(rock.remaining()).isEmpty();
        assertThat(rock.correlationSeconds()).isZero();
        assertThat(rock.standing()).isGreaterThan(0.1);
        assertThat(rock.passing()).isEqualTo(Passing.NONE);
    }

    @Test
    void withinTheClipTheFramesThemselvesAreShown() {
        Preview preview = preview();
        assertThat(preview.lengthSeconds()).isCloseTo(Coast.FRAMES * Coast.SPACING, within(1e-9));
        assertThat(preview.framesFor(2)).isEqualTo(8);
        assertThat(preview.framesFor(0.01)).isEqualTo(1);
        assertThat(preview.framesFor(1e6)).isEqualTo(Coast.FRAMES);
        assertThat(preview.baseFrame(100)).isEqualTo(-1);
        for (int frames : new int[] {1, 8, Coast.FRAMES}) {
            Preview.Exposure shown = preview.render(frames * Coast.SPACING);
            assertThat(shown.fromFrames()).isTrue();
            assertThat(shown.knownFraction()).isEqualTo(1);
            assertThat(shown.detail()).containsOnly(1);
            float[] plane = new float[Coast.WIDTH * Coast.HEIGHT];
            double[] mean = new double[plane.length];
            for (int i = 0; i < frames; i++) {
                survey.clip().channel(i, 2, plane);
                for (int p = 0; p < plane.length; p++) {
                    mean[p] += plane[p] / (double) frames;
                }
            }
            assertThat(shown.picture().blue()).containsExactly(Plain.narrow(mean), within(1e-6f));
        }
        assertThat(preview.base(100).green())
                .containsExactly(
                        preview.render(preview.lengthSeconds()).picture().green(), within(1e-6f));
        assertThatThrownBy(() -> preview.render(0)).hasMessageContaining("more than 0 s");
    }

    @Test
    void beyondTheClipRockAndLightStay() {
        Preview preview = preview();
        RgbPicture clip = preview.render(15).picture();
        Preview.Exposure shown = preview.render(120);
        assertThat(shown.fromFrames()).isFalse();
        assertThat(Coast.moments(shown.picture().green(), 19, 29)[0])
                .isCloseTo(Coast.moments(clip.green(), 19, 29)[0], within(0.01));
        for (int p = 36 * Coast.WIDTH; p < Coast.WIDTH * Coast.HEIGHT; p++) {
            assertThat(shown.picture().green()[p]).isCloseTo(clip.green()[p], within(2e-3f));
            assertThat(shown.detail()[p]).isCloseTo(1, within(0.02f));
        }
        assertThat(shown.knownFraction()).isBetween(0.5, 0.99);
    }

    /** Water alone, eight times the clip: about √(1/8) = 0.35 of the fine texture that the clip's mean left, and all the light. */
    @Test
    void beyondTheClipWaterSmooths() {
        double[][] water = Coast.water(Coast.FRAMES);
        Clip clip = Plain.clip(
                Coast.WIDTH,
                Coast.HEIGHT,
                Coast.FRAMES,
                Coast.SPACING,
                (x, y, t) ->
                        Coast.WATER + Coast.DEVIATION * water[(int) Math.rint(t / Coast.SPACING)][y * Coast.WIDTH + x]);
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[RegionModel.FEATURES][Kind.FLOWING.column()] = 10;
        double[] ones = new double[RegionModel.FEATURES];
        Arrays.fill(ones, 1);
        ViewSurvey survey = ViewSurvey.of(
                clip, Strokes.none(), RegionModel.of(new double[RegionModel.FEATURES], ones, weights), Work.alone());
        assertThat(survey.camera().verdict()).isEqualTo(Camera.Verdict.UNSURE);
        Preview preview = Measurement.of(survey, Work.alone()).preview(Work.alone());
        double[] now = Coast.moments(preview.render(15).picture().green(), 0, Coast.HEIGHT);
        Preview.Exposure shown = preview.render(120);
        double[] then = Coast.moments(shown.picture().green(), 0, Coast.HEIGHT);
        assertThat(now[1]).isCloseTo(Coast.DEVIATION * Math.sqrt(2 * Coast.MEMORY / 15), within(0.2 * now[1]));
        assertThat(then[0]).isCloseTo(now[0], within(1e-3));
        assertThat(then[1] / now[1]).isBetween(0.25, 0.6);
        assertThat(shown.knownFraction()).isEqualTo(1);
    }

    /** Along the drift a sky of eight times the clip is more even than the clip's own streaks. */
    @Test
    void cloudsGrowIntoStreaks() {
        Preview preview = preview();
        float[] clip = preview.render(15).picture().green();
        float[] shown = preview.render(120).picture().green();
        assertThat(steps(shown)).isLessThan(0.8 * steps(clip));
    }

    private static double steps(float[] plane) {
        double sum = 0;
        for (int y = 3; y < 12; y++) {
            for (int x = 24; x < Coast.WIDTH - 4; x++) {
                double d = plane[y * Coast.WIDTH + x + 1] - plane[y * Coast.WIDTH + x];
                sum += d * d;
            }
        }
        return sum;
    }

    /** The same water taken for branches: they sway, which is measured alike and draws no lines. */
    @Test
    void whatSwaysIsMeasuredAsWhatFlows() {
        RegionMotion branches = only(Kind.SWAYING, Coast.SPACING);
        RegionMotion water = only(Kind.FLOWING, Coast.SPACING);
        assertThat(branches.part().kind()).isEqualTo(Kind.SWAYING);
        assertThat(branches.remaining()).hasSize(14);
        assertThat(branches.texture()).isEqualTo(water.texture());
        assertThat(branches.correlationSeconds())
                .isEqualTo(water.correlationSeconds())
                .isGreaterThan(0);
        assertThat(branches.flags().seen()).isTrue();
        assertThat(branches.flags().borrowed()).isFalse();
        assertThat(branches.lines()).isEqualTo(FlowLines.NONE);
        RegionMotion rock = only(Kind.FIXED, Coast.SPACING);
        assertThat(rock.correlationSeconds()).isZero();
        assertThat(rock.remaining()).isEmpty();
        assertThat(rock.flags().coarse()).isFalse();
        assertThat(rock.rhythm()).isEqualTo(Rhythm.NONE);
        assertThat(rock.passing()).isEqualTo(Passing.NONE);
        assertThat(only(Kind.DRIFTING, Coast.SPACING).remaining()).isEmpty();
    }

    /** Frames three seconds apart tell how much is left, but neither a rhythm nor lines. */
    @Test
    void spacedFramesTellNoRhythm() {
        RegionMotion water = only(Kind.FLOWING, 3);
        assertThat(water.rhythm()).isEqualTo(Rhythm.NONE);
        assertThat(water.lines()).isEqualTo(FlowLines.NONE);
        assertThat(water.flags().seen()).isTrue();
        assertThat(water.flags().coarse()).isFalse();
    }

    private static RegionMotion only(Kind kind, double spacing) {
        double[][] water = Coast.water(Coast.FRAMES);
        Clip clip = Plain.clip(
                Coast.WIDTH,
                Coast.HEIGHT,
                Coast.FRAMES,
                spacing,
                (x, y, t) -> Coast.WATER + Coast.DEVIATION * water[(int) Math.rint(t / spacing)][y * Coast.WIDTH + x]);
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[RegionModel.FEATURES][kind.column()] = 20;
        ViewSurvey survey = ViewSurvey.of(clip, Strokes.none(), Coast.byRow(weights), Work.alone());
        Measurement all = Measurement.of(survey, Work.alone());
        assertThat(all.noiseAt(0.3)).isLessThan(1e-3);
        return all.regions().get(0);
    }

    private RegionMotion region(Kind kind) {
        return measured().regions().stream()
                .filter(region -> region.part().kind() == kind)
                .findFirst()
                .orElseThrow();
    }
}
