package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What lies under strokes with a width, by plain geometry. */
class StrokesTest {

    private static final int WIDTH = 101;
    private static final int HEIGHT = 61;

    private static Strokes.Stroke line(Kind kind, double y, double width) {
        return new Strokes.Stroke(kind, List.of(new Strokes.Point(0.2, y), new Strokes.Point(0.8, y)), width);
    }

    private static byte[] covered(Strokes.Stroke... strokes) {
        byte[] covered = new byte[WIDTH * HEIGHT];
        Arrays.fill(covered, (byte) -1);
        for (Strokes.Stroke each : strokes) {
            Strokes.cover(each, WIDTH, HEIGHT, covered);
        }
        return covered;
    }

    /** A line of 0.1 of 101 px is 10.1 px wide, with round ends of half of it. */
    @Test
    void aLineCoversItsWidthAndItsRoundEnds() {
        byte[] covered = covered(line(Kind.FLOWING, 0.5, 0.1));
        double radius = 0.1 * WIDTH / 2;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double along = Math.max(20, Math.min(80, x));
                boolean under = Math.hypot(x - along, y - 30) <= radius;
                assertThat(covered[y * WIDTH + x]).as("%d, %d", x, y).isEqualTo((byte)
                        (under ? Kind.FLOWING.column() : -1));
            }
        }
    }

    @Test
    void aLaterLineLiesOverAnEarlierOne() {
        byte[] covered = covered(line(Kind.FLOWING, 0.5, 0.2), line(Kind.FIXED, 0.5, 0.05));
        assertThat(covered[30 * WIDTH + 50]).isEqualTo((byte) Kind.FIXED.column());
        assertThat(covered[38 * WIDTH + 50]).isEqualTo((byte) Kind.FLOWING.column());
    }

    @Test
    void aLineWithoutAWidthCoversNothingAndOneTooWideIsRefused() {
        assertThat(covered(line(Kind.FLOWING, 0.5, 0))).containsOnly((byte) -1);
        assertThatThrownBy(() -> line(Kind.FLOWING, 0.5, 0.3)).hasMessageContaining("a quarter of the picture");
    }

    /** What is cut from the sides leaves the line as wide in pixels: 0.1 of 100 is 0.125 of 80. */
    @Test
    void inACutPictureALineIsAsWideInPixels() {
        Strokes cut = new Strokes(List.of(line(Kind.FLOWING, 0.5, 0.1))).cropped(10, 100, 60);
        assertThat(cut.strokes().get(0).width()).isEqualTo(0.125);
    }

    /** Down the middle of 100 × 60 px of which 10 are cut: 0.1 is outside, 0.3 is pixel 30 or (30 − 10)/80, 0.5 of 60 is 20 of 40. */
    @Test
    void cornersThatWereCutAreLeftOut() {
        Strokes.Point outside = new Strokes.Point(0.05, 0.5);
        Strokes.Point inside = new Strokes.Point(0.3, 0.35);
        Strokes strokes = new Strokes(List.of(
                new Strokes.Stroke(Kind.FIXED, List.of(outside, inside)),
                new Strokes.Stroke(Kind.FIXED, List.of(outside)),
                new Strokes.Stroke(
                        Kind.FIXED, List.of(new Strokes.Point(0.1, 10 / 60.0), new Strokes.Point(0.9, 0.5)), 0.25)));
        Strokes cut = strokes.cropped(10, 100, 60);
        assertThat(cut.strokes()).hasSize(2);
        assertThat(cut.strokes().get(0).points()).hasSize(1);
        assertThat(cut.strokes().get(0).points().get(0).x()).isCloseTo(0.25, within(1e-12));
        assertThat(cut.strokes().get(0).points().get(0).y()).isCloseTo(11 / 40.0, within(1e-12));
        // what lies on the cut is in the picture; no line is wider than a quarter
        assertThat(cut.strokes().get(1).points()).hasSize(2);
        assertThat(cut.strokes().get(1).width()).isEqualTo(0.25);
        assertThat(strokes.cropped(0, 100, 60)).isSameAs(strokes);
        assertThat(strokes.isEmpty()).isFalse();
        assertThat(Strokes.none().isEmpty()).isTrue();
    }

    /** Through corners, by the distance of each place from the pieces of the line. */
    @Test
    void aLineOfCornersCoversBothItsPieces() {
        double[][] corners = {{0.1, 0.2}, {0.6, 0.9}, {0.9, 0.3}};
        byte[] covered = covered(new Strokes.Stroke(Kind.SWAYING, points(corners), 0.08));
        double radius = 0.08 * WIDTH / 2;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double away = Math.min(away(x, y, corners[0], corners[1]), away(x, y, corners[1], corners[2]));
                if (Math.abs(away - radius) > 0.01) {
                    assertThat(covered[y * WIDTH + x]).as("%d, %d", x, y).isEqualTo((byte)
                            (away < radius ? Kind.SWAYING.column() : -1));
                }
            }
        }
    }

    /** The nearest of a thousand places on a piece of the line. */
    private static double away(int x, int y, double[] from, double[] to) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k <= 1000; k++) {
            double u = (from[0] + k / 1e3 * (to[0] - from[0])) * (WIDTH - 1) - x;
            double v = (from[1] + k / 1e3 * (to[1] - from[1])) * (HEIGHT - 1) - y;
            least = Math.min(least, u * u + v * v);
        }
        return Math.sqrt(least);
    }

    private static List<Strokes.Point> points(double[][] corners) {
        return Arrays.stream(corners).map(c -> new Strokes.Point(c[0], c[1])).toList();
    }

    /** From corner to corner in steps of a pixel along the longer way; every pixel is within half of one of the line. */
    @Test
    void aThinLineGoesFromPixelToNeighbour() {
        double[][] corners = {{0.1, 0.2}, {0.6, 0.9}, {0.9, 0.3}};
        int[] pixels = Strokes.pixels(new Strokes.Stroke(Kind.FIXED, points(corners)), WIDTH, HEIGHT, 1000);
        assertThat(pixels[0]).isEqualTo(12 * WIDTH + 10);
        assertThat(pixels[50]).isEqualTo(54 * WIDTH + 60);
        assertThat(pixels[pixels.length - 1]).isEqualTo(18 * WIDTH + 90);
        assertThat(pixels).hasSize(1 + 50 + 36);
        for (int k = 0; k < pixels.length; k++) {
            int x = pixels[k] % WIDTH;
            int y = pixels[k] / WIDTH;
            double[][] piece = {corners[k <= 50 ? 0 : 1], corners[k <= 50 ? 1 : 2]};
            assertThat(away(x, y, piece[0], piece[1])).isLessThan(0.51);
            if (k > 0) {
                assertThat(Math.abs(x - pixels[k - 1] % WIDTH)).isLessThanOrEqualTo(1);
                assertThat(Math.abs(y - pixels[k - 1] / WIDTH)).isLessThanOrEqualTo(1);
            }
        }
        // 87 pixels, at most 30 of them: every third
        int[] few = Strokes.pixels(new Strokes.Stroke(Kind.FIXED, points(corners)), WIDTH, HEIGHT, 30);
        assertThat(few).hasSize(29);
        for (int k = 0; k < few.length; k++) {
            assertThat(few[k]).isEqualTo(pixels[3 * k]);
        }
    }

    @Test
    void aPointIsOnePixel() {
        Strokes.Stroke point = new Strokes.Stroke(Kind.FIXED, List.of(new Strokes.Point(0.25, 0.5)));
        assertThat(Strokes.pixels(point, WIDTH, HEIGHT, 1)).containsExactly(30 * WIDTH + 25);
        assertThatThrownBy(() -> new Strokes.Stroke(Kind.FIXED, List.of())).hasMessageContaining("a point or more");
        assertThatThrownBy(() -> new Strokes.Point(0.5, 1.01)).hasMessageContaining("0 and 1");
        assertThatThrownBy(() -> new Strokes.Point(-0.01, 0.5)).hasMessageContaining("0 and 1");
    }
}
