package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Strokes over a picture whose left and right halves differ in motion and colour. */
class StrokeLiftTest {

    private static final int WIDTH = 40;
    private static final int HEIGHT = 20;

    /** A stroke lifts its own kind only, most under itself, the like half more than the unlike one. */
    @Test
    void whatIsAlikeIsLifted() {
        float[][] logits = lifted(stroke(Kind.FLOWING, 0, 0.2, 0.5, 0.3, 0.5));
        float[] water = logits[Kind.FLOWING.column()];
        assertThat(at(water, 8, 10)).isCloseTo(6, within(1e-4f));
        assertThat(at(water, 16, 2)).isGreaterThan(at(water, 24, 2) + 1);
        assertThat(at(water, 8, 14)).isGreaterThan(at(water, 8, 18)); // near counts
        for (Kind kind : Kind.values()) {
            if (kind != Kind.FLOWING) {
                assertThat(logits[kind.column()]).containsOnly(0);
            }
        }
    }

    /**
     * Ten pixels farther along an even half: 3 · 10/40 = 0.75 away, so the lift is 6 exp(−0.75²/(2 · 0.5²)) = 6 · e^−1.125 =
     * 1.947917, and ten rows down the same: distance counts in widths.
     */
    @Test
    void theLiftFadesAsABell() {
        float[] water = liftedEven(stroke(Kind.FLOWING, 0, 0, 0))[Kind.FLOWING.column()];
        assertThat(at(water, 10, 0)).isCloseTo(1.947917f, within(1e-4f));
        assertThat(at(water, 0, 10)).isCloseTo(1.947917f, within(1e-4f));
        assertThat(at(water, 10, 10)).isCloseTo((float) (6 * Math.exp(-2.25)), within(1e-4f));
    }

    @Test
    void ofSeveralStrokesTheNearestCounts() {
        Strokes.Stroke left = stroke(Kind.FLOWING, 0, 0, 0);
        Strokes.Stroke right = stroke(Kind.FLOWING, 0, 1, 0);
        float[] both = liftedEven(left, right)[Kind.FLOWING.column()];
        float[] one = liftedEven(left)[Kind.FLOWING.column()];
        float[] other = liftedEven(right)[Kind.FLOWING.column()];
        for (int p = 0; p < both.length; p++) {
            assertThat(both[p]).isEqualTo(Math.max(one[p], other[p]));
        }
    }

    /** Under a wide stroke all is of its kind and beyond it nothing is touched; where two lie, the later one counts. */
    @Test
    void aWideStrokeCovers() {
        Strokes.Stroke rock = stroke(Kind.FIXED, 0.2, 0.5, 0.5);
        Strokes.Stroke leaves = stroke(Kind.SWAYING, 0.1, 0.5, 0.5);
        float[][] logits = lifted(rock, leaves);
        float middle = at(logits[Kind.SWAYING.column()], 20, 10);
        assertThat(middle).isGreaterThan(6);
        assertThat(at(logits[Kind.FIXED.column()], 20, 10)).isZero();
        assertThat(at(logits[Kind.FIXED.column()], 23, 10)).isEqualTo(middle); // 3.5 px off the centre, of 2 and 4
        assertThat(at(logits[Kind.FIXED.column()], 25, 10)).isZero();
        assertThat(at(logits[Kind.FIXED.column()], 19, 13)).isEqualTo(middle);
        assertThat(at(logits[Kind.FIXED.column()], 19, 14)).isZero();
    }

    /** Three points make an angle; what is covered is within the half width of either line. */
    @Test
    void aWideStrokeFollowsItsCorners() {
        Strokes.Stroke angle = stroke(Kind.FIXED, 0.1, 0.2, 0.2, 0.8, 0.2, 0.8, 0.9);
        byte[] covered = new byte[WIDTH * HEIGHT];
        Arrays.fill(covered, (byte) -1);
        Strokes.cover(angle, WIDTH, HEIGHT, covered);
        double[][] corners = {{0.2 * 39, 0.2 * 19}, {0.8 * 39, 0.2 * 19}, {0.8 * 39, 0.9 * 19}};
        for (int p = 0; p < covered.length; p++) {
            double nearest = Double.MAX_VALUE;
            for (int k = 0; k < 2; k++) {
                for (int s = 0; s <= 2000; s++) {
                    double t = s / 2000.0;
                    int row = p / WIDTH;
                    double dx = corners[k][0] + t * (corners[k + 1][0] - corners[k][0]) - p % WIDTH;
                    double dy = corners[k][1] + t * (corners[k + 1][1] - corners[k][1]) - row;
                    nearest = Math.min(nearest, Math.sqrt(dx * dx + dy * dy));
                }
            }
            if (Math.abs(nearest - 2) > 1e-3) {
                assertThat(covered[p] >= 0).as("pixel %s", p).isEqualTo(nearest < 2);
            }
        }
    }

    /** A picture that lost 10 of 100 px at every side: 0.5 stays the middle, 0.3 becomes 20/80, 0.05 is cut off. */
    @Test
    void strokesFollowACrop() {
        Strokes strokes = new Strokes(
                List.of(stroke(Kind.FIXED, 0.08, 0.5, 0.5, 0.3, 0.05, 0.3, 0.3), stroke(Kind.FLOWING, 0, 0.05, 0.5)));
        Strokes cut = strokes.cropped(10, 100, 100);
        assertThat(cut.strokes()).hasSize(1);
        assertThat(cut.strokes().get(0).width()).isCloseTo(0.1, within(1e-12));
        assertThat(cut.strokes().get(0).points()).hasSize(2);
        assertThat(cut.strokes().get(0).points().get(0).x()).isCloseTo(0.5, within(1e-12));
        assertThat(cut.strokes().get(0).points().get(1).x()).isCloseTo(0.25, within(1e-12));
        assertThat(cut.strokes().get(0).points().get(1).y()).isCloseTo(0.25, within(1e-12));
        assertThat(strokes.cropped(0, 100, 100)).isSameAs(strokes);
    }

    @Test
    void aModelIsALineOfTheScaledFeaturesClipped() {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[2] = new double[] {1, 2, 3, 4};
        weights[RegionModel.FEATURES] = new double[] {0.5, 0, 0, -0.5};
        double[] mean = new double[RegionModel.FEATURES];
        double[] deviation = new double[RegionModel.FEATURES];
        Arrays.fill(deviation, 1);
        mean[2] = 10;
        deviation[2] = 2;
        RegionModel model = RegionModel.of(mean, deviation, weights);
        float[][] features = new float[RegionModel.FEATURES][3];
        features[2] = new float[] {13, 100, -100}; // (13 − 10)/2 = 1.5; ± 4 at most
        float[][] logits = new float[RegionModel.KINDS][3];
        for (int p = 0; p < 3; p++) {
            model.logits(features, p, logits);
        }
        assertThat(logits[0]).containsExactly(2, 4.5f, -3.5f);
        assertThat(logits[3]).containsExactly(5.5f, 15.5f, -16.5f);
        assertThat(model.weights()).isDeepEqualTo(weights);
        model.weights()[2][0] = 7;
        assertThat(model.weights()[2][0]).isEqualTo(1);
        String told = RegionModel.FEATURES + " features";
        double[] more = new double[RegionModel.FEATURES + 1];
        assertThatThrownBy(() -> RegionModel.of(more, deviation, weights)).hasMessageContaining(told);
        assertThatThrownBy(() -> RegionModel.of(mean, more, weights)).hasMessageContaining(told);
        assertThatThrownBy(() -> RegionModel.of(mean, deviation, new double[RegionModel.FEATURES][4]))
                .hasMessageContaining(told);
    }

    private static Strokes.Stroke stroke(Kind kind, double width, double... places) {
        List<Strokes.Point> points = new ArrayList<>();
        for (int k = 0; k < places.length; k += 2) {
            points.add(new Strokes.Point(places[k], places[k + 1]));
        }
        return new Strokes.Stroke(kind, points, width);
    }

    private static float[][] lifted(Strokes.Stroke... strokes) {
        float[][] features = new float[RegionModel.FEATURES][WIDTH * HEIGHT];
        float[][] colour = new float[3][WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            boolean left = p % WIDTH < WIDTH / 2;
            features[1][p] = left ? 3 : 0;
            colour[2][p] = left ? 0.4f : 0.1f;
        }
        return lift(features, colour, strokes);
    }

    private static float[][] liftedEven(Strokes.Stroke... strokes) {
        return lift(new float[RegionModel.FEATURES][WIDTH * HEIGHT], new float[3][WIDTH * HEIGHT], strokes);
    }

    private static float[][] lift(float[][] features, float[][] colour, Strokes.Stroke... strokes) {
        float[][] logits = new float[RegionModel.KINDS][WIDTH * HEIGHT];
        StrokeLift.apply(
                new Strokes(List.of(strokes)), RegionModel.standard(), features, colour, WIDTH, HEIGHT, logits);
        return logits;
    }

    private static float at(float[] plane, int x, int y) {
        return plane[y * WIDTH + x];
    }
}
